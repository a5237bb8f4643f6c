//! Lists of operators, and which of them will do: for the worker, or a step at a time for a page without one.

use pintle_core::{
    Document,
    job::CheckedJob,
    operators::{self, ListEntry, ReadOperators},
    plan::{RankAsked, Ranking, SetOutSearch},
};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use super::codec::{decode, decode_job, encode, thrown};

fn read_job(job: JsValue) -> Result<CheckedJob, JsValue> {
    CheckedJob::read(&decode_job(job)?).map_err(|invalid| thrown(&invalid))
}

fn entries(list: JsValue) -> Result<Vec<ListEntry>, JsValue> {
    let document: Document = decode(list, "operators")?;
    Ok(operators::read(&document).operators)
}

/// A list of operators: what can be used of it, what is left out and why, what is warned of. Never throws of a list's content.
#[wasm_bindgen(unchecked_return_type = "ReadOperators")]
pub fn read_operators(#[wasm_bindgen(unchecked_param_type = "any")] list: JsValue) -> Result<JsValue, JsValue> {
    let document: Document = decode(list, "operators")?;
    let read: ReadOperators = operators::read(&document);
    encode(&read)
}

/// The one table of the numbers of a listed operator: ranges, examples.
#[wasm_bindgen(unchecked_return_type = "FieldRule[]")]
pub fn operator_fields() -> Result<JsValue, JsValue> {
    encode(&operators::fields())
}

/// A ranking being made. Free it when it is done or given up.
#[wasm_bindgen]
pub struct Ranker {
    ranking: Ranking,
}

/// Coldest and hottest air, where both are said.
fn asked(coldest_c: Option<f64>, hottest_c: Option<f64>) -> RankAsked {
    RankAsked { air_c: coldest_c.zip(hottest_c).filter(|(least, most)| least <= most).map(<[f64; 2]>::from) }
}

#[wasm_bindgen]
impl Ranker {
    /// A ranking of what can be used of a list for a job. Throws `Invalid` of the job.
    #[wasm_bindgen(constructor)]
    pub fn new(
        #[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue,
        #[wasm_bindgen(unchecked_param_type = "any")] list: JsValue,
        coldest_c: Option<f64>,
        hottest_c: Option<f64>,
    ) -> Result<Ranker, JsValue> {
        let ranking = Ranking::new(&read_job(job)?, &entries(list)?, asked(coldest_c, hottest_c));
        Ok(Ranker { ranking: ranking.map_err(|invalid| thrown(&invalid))? })
    }

    /// Begins again for a job or a list that may have changed; what they leave as it was is not computed again. Throws `Invalid` of the job.
    pub fn renew(
        &mut self,
        #[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue,
        #[wasm_bindgen(unchecked_param_type = "any")] list: JsValue,
        coldest_c: Option<f64>,
        hottest_c: Option<f64>,
    ) -> Result<(), JsValue> {
        let asked = asked(coldest_c, hottest_c);
        self.ranking.renew(&read_job(job)?, &entries(list)?, asked).map_err(|invalid| thrown(&invalid))
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

/// The search for a set-out, a little at a time. Free it when it is done or given up.
#[wasm_bindgen]
pub struct Seeking {
    search: SetOutSearch,
}

#[wasm_bindgen]
impl Seeking {
    /// The search of the job's `setout` block. Throws `Invalid`.
    #[wasm_bindgen(constructor)]
    pub fn new(#[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue) -> Result<Seeking, JsValue> {
        let search = SetOutSearch::new(&read_job(job)?).map_err(|invalid| thrown(&invalid))?;
        Ok(Seeking { search })
    }

    /// Does up to `work` units more, of about a millisecond; `true` while there is any left.
    pub fn step(&mut self, work: usize) -> bool {
        self.search.step(work)
    }

    /// Units done.
    pub fn units(&self) -> usize {
        self.search.units()
    }

    /// The answer, that of `set_out`; `null` before the end.
    #[wasm_bindgen(unchecked_return_type = "SetOutAnswer | null")]
    pub fn answer(&self) -> Result<JsValue, JsValue> {
        encode(&self.search.answer())
    }
}
