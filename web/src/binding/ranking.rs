//! Which operator of a list will do: for the worker, or a step at a time for a page without one.

use pintle_core::{
    Document,
    operators::{self, ListEntry},
    plan::{RankAsked, Ranking},
};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use super::codec::{decode, encode, thrown};
use super::setout::read_checked;

fn entries(list: JsValue) -> Result<Vec<ListEntry>, JsValue> {
    let document: Document = decode(list, "operators")?;
    Ok(operators::read(&document).operators)
}

/// A ranking being made. Free it when it is done or given up.
#[wasm_bindgen]
pub struct Ranker {
    ranking: Ranking,
}

/// What is asked beside the job; the air's temperatures are not asked on the page.
fn asked(own_efficiency: bool, own_body: bool) -> RankAsked {
    RankAsked { air_c: None, own_efficiency, own_body }
}

#[wasm_bindgen]
impl Ranker {
    /// A ranking of what can be used of a list for a job; the job's own efficiency and outline hold for all where they were said. Throws `Invalid` of
    /// the job.
    #[wasm_bindgen(constructor)]
    pub fn new(
        #[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue,
        #[wasm_bindgen(unchecked_param_type = "any")] list: JsValue,
        own_efficiency: bool,
        own_body: bool,
    ) -> Result<Ranker, JsValue> {
        let ranking = Ranking::new(&read_checked(job)?, &entries(list)?, asked(own_efficiency, own_body));
        Ok(Ranker { ranking: ranking.map_err(|invalid| thrown(&invalid))? })
    }

    /// Begins again for a job or a list that may have changed; what they leave as it was is not computed again. Throws `Invalid` of the job.
    pub fn renew(
        &mut self,
        #[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue,
        #[wasm_bindgen(unchecked_param_type = "any")] list: JsValue,
        own_efficiency: bool,
        own_body: bool,
    ) -> Result<(), JsValue> {
        let asked = asked(own_efficiency, own_body);
        self.ranking.renew(&read_checked(job)?, &entries(list)?, asked).map_err(|invalid| thrown(&invalid))
    }

    /// Does up to `work` more, units of about a millisecond; `true` while there is any left.
    pub fn step(&mut self, work: usize) -> bool {
        self.ranking.step(work)
    }

    /// How far it is.
    #[wasm_bindgen(unchecked_return_type = "RankProgress")]
    pub fn progress(&self) -> Result<JsValue, JsValue> {
        encode(&self.ranking.progress())
    }

    /// The answer so far, in order.
    #[wasm_bindgen(unchecked_return_type = "OperatorRanking")]
    pub fn answer(&self) -> Result<JsValue, JsValue> {
        encode(&self.ranking.answer())
    }

    /// What would make an operator do, each by itself.
    #[wasm_bindgen(unchecked_return_type = "Suggestion[]")]
    pub fn suggestions(&self, id: &str) -> Result<JsValue, JsValue> {
        encode(&self.ranking.suggestions(id))
    }

    /// The job with an operator in it, at its best place where one was found; `null` for one that is not looked at yet.
    #[wasm_bindgen(unchecked_return_type = "Job | null")]
    pub fn taken(&self, id: &str) -> Result<JsValue, JsValue> {
        encode(&self.ranking.taken(id))
    }
}
