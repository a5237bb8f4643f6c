//! Tables and numbers for people, without a job.

use pintle_core::units::{self, Quantity, Rounding, System};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use super::codec::{decode, encode};

/// The one table of the job's numbers: ranges, defaults, examples.
#[wasm_bindgen(unchecked_return_type = "FieldRule[]")]
pub fn fields() -> Result<JsValue, JsValue> {
    encode(&pintle_core::job::fields())
}

/// A value with its unit: `"308 N·m"`.
#[wasm_bindgen]
pub fn show(
    value: f64,
    #[wasm_bindgen(unchecked_param_type = "Quantity")] quantity: JsValue,
    #[wasm_bindgen(unchecked_param_type = "System")] system: JsValue,
) -> Result<String, JsValue> {
    Ok(units::show(value, self::quantity(quantity)?, self::system(system)?))
}

/// One end of an allowed range, rounded `"up"` (the least) or `"down"` (the most) so that the shown number is itself allowed.
#[wasm_bindgen]
pub fn show_limit(
    value: f64,
    #[wasm_bindgen(unchecked_param_type = "Quantity")] quantity: JsValue,
    #[wasm_bindgen(unchecked_param_type = "System")] system: JsValue,
    #[wasm_bindgen(unchecked_param_type = "\"up\" | \"down\"")] rounding: JsValue,
) -> Result<String, JsValue> {
    let rounding = decode::<End>(rounding, "rounding")?.into();
    Ok(units::show_limit(value, self::quantity(quantity)?, self::system(system)?, rounding))
}

/// What stands in an input that nobody typed in: `"872.8"`, or by the marks of a tape `2'-10 3/8"`.
#[wasm_bindgen]
pub fn entered(
    value: f64,
    #[wasm_bindgen(unchecked_param_type = "Quantity")] quantity: JsValue,
    #[wasm_bindgen(unchecked_param_type = "System")] system: JsValue,
) -> Result<String, JsValue> {
    Ok(units::entered(value, self::quantity(quantity)?, self::system(system)?))
}

/// The number alone, in decimals: `"872.8"`.
#[wasm_bindgen(js_name = bare)]
pub fn plain_number(
    value: f64,
    #[wasm_bindgen(unchecked_param_type = "Quantity")] quantity: JsValue,
    #[wasm_bindgen(unchecked_param_type = "System")] system: JsValue,
) -> Result<String, JsValue> {
    Ok(units::plain_number(value, self::quantity(quantity)?, self::system(system)?))
}

/// A length in feet, inches and a fraction of an inch: `2'-10 3/8"`, rounded to `1/denominator` inch before it is split;
/// 0 for the fractions of a tape.
#[wasm_bindgen]
pub fn feet_inches(value_m: f64, denominator: u32) -> String {
    units::feet_inches(value_m, denominator)
}

/// A length as it is marked with a tape: whole millimetres, or feet, inches and sixteenths.
#[wasm_bindgen]
pub fn mark(value_m: f64, #[wasm_bindgen(unchecked_param_type = "System")] system: JsValue) -> Result<String, JsValue> {
    Ok(units::mark(value_m, self::system(system)?))
}

/// A mark without its sign, and the side of its line it lies on.
#[wasm_bindgen(unchecked_return_type = "MarkApart")]
pub fn mark_apart(
    value_m: f64,
    #[wasm_bindgen(unchecked_param_type = "System")] system: JsValue,
) -> Result<JsValue, JsValue> {
    encode(&units::mark_apart(value_m, self::system(system)?))
}

/// The unit alone: `"mm"`; empty for plain numbers.
#[wasm_bindgen]
pub fn unit(
    #[wasm_bindgen(unchecked_param_type = "Quantity")] quantity: JsValue,
    #[wasm_bindgen(unchecked_param_type = "System")] system: JsValue,
) -> Result<String, JsValue> {
    Ok(units::symbol(self::quantity(quantity)?, self::system(system)?).into())
}

/// A typed number in the document's unit. Throws `ReadError` when it is not understood.
#[wasm_bindgen]
pub fn read(
    text: &str,
    #[wasm_bindgen(unchecked_param_type = "Quantity")] quantity: JsValue,
    #[wasm_bindgen(unchecked_param_type = "System")] system: JsValue,
) -> Result<f64, JsValue> {
    units::read(text, self::quantity(quantity)?, self::system(system)?).map_err(|error| match encode(&error) {
        Ok(plain) | Err(plain) => plain,
    })
}

/// Version of the calculation.
#[wasm_bindgen]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").into()
}

/// Which way a limit is rounded.
#[derive(serde::Deserialize)]
#[serde(rename_all = "snake_case")]
enum End {
    Up,
    Down,
}

impl From<End> for Rounding {
    fn from(end: End) -> Rounding {
        match end {
            End::Up => Rounding::Up,
            End::Down => Rounding::Down,
        }
    }
}

fn quantity(value: JsValue) -> Result<Quantity, JsValue> {
    decode(value, "quantity")
}

fn system(value: JsValue) -> Result<System, JsValue> {
    decode(value, "system")
}
