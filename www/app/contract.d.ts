/**
 * The documents and the binding's values. Written from the Rust types, do not edit; after a change there:
 * PINTLE_BLESS=1 cargo test -p pintle-tests --test page_types
 */

/**
 * How far the leaf opens.
 */
export type Swing = {
/**
 * Leaf angle fully open, degrees from closed.
 */
open_deg: number, };

/**
 * Two plain hinge pins a spacing apart, and a collar that carries the weight.
 */
export type PlainHinges = {
/**
 * Vertical distance between the hinges, m.
 */
spacing_m: number,
/**
 * Radius of the pins, m.
 */
pin_radius_m: number,
/**
 * Outer radius of the thrust collar, m.
 */
thrust_outer_radius_m: number,
/**
 * Inner radius of the thrust collar, m.
 */
thrust_inner_radius_m: number,
/**
 * Coefficient of sliding friction.
 */
friction_coefficient: number, };

/**
 * Steady pulls both ways at one leaf angle, square to the leaf, arm disconnected, calm air.
 */
export type MeasuredHinges = {
/**
 * Pull that keeps the leaf opening, N.
 */
pull_open_n: number,
/**
 * Pull that keeps the leaf closing, N.
 */
pull_close_n: number,
/**
 * Hinge axis to where the pull acts, m.
 */
pull_radius_m: number,
/**
 * Leaf angle at which it was measured, degrees.
 */
pull_leaf_deg: number, };

/**
 * What resists at the hinges: built up from pins and collar, or measured.
 */
export type Hinges = { "kind": "plain" } & PlainHinges | { "kind": "measured" } & MeasuredHinges;

/**
 * The leaf's weight, size and what the wind sees of it.
 */
export type Leaf = {
/**
 * Mass, kg.
 */
mass_kg: number,
/**
 * Hinge axis to latch edge, m.
 */
length_m: number,
/**
 * Height, m. Not used by the loads yet; kept for the drawing and the hand-over.
 */
height_m: number | null,
/**
 * Area that stops the wind, square to the leaf, m².
 */
wind_area_m2: number,
/**
 * Hinge axis to mass centre along the leaf, m; default half the length.
 */
mass_centroid_m: number | null,
/**
 * Hinge axis to the wind area's centre along the leaf, m; default half the length.
 */
wind_centroid_m: number | null,
/**
 * Moment of inertia about the hinge axis, kg·m²; default mass × length² / 3, also where the mass centre was moved.
 */
inertia_kg_m2: number | null, };

/**
 * Where the hinge is for a person on the side the leaf opens towards, facing the gate.
 */
export type Hand = "right" | "left";

/**
 * Side of the line from shaft to bracket, looking along it.
 */
export type Elbow = "left" | "right";

/**
 * Crank and link in plan, and where they are fixed.
 */
export type Arm = {
/**
 * Shaft along the closed leaf from the hinge axis, m.
 */
shaft_x_m: number,
/**
 * Shaft towards the side the leaf opens to, m.
 */
shaft_y_m: number,
/**
 * Bracket pin along the leaf, m.
 */
bracket_u_m: number,
/**
 * Bracket pin proud of the leaf on its opening side, m.
 */
bracket_v_m: number,
/**
 * Crank, shaft to elbow, m.
 */
crank_m: number,
/**
 * Link, elbow to bracket pin, m.
 */
link_m: number,
/**
 * Side of the line shaft→bracket the elbow is on.
 */
elbow: Elbow, };

/**
 * The operator's ratings at its output shaft.
 */
export type Operator = {
/**
 * Rated torque, N·m.
 */
rated_torque_n_m: number,
/**
 * Peak torque, N·m; unknown unless given.
 */
peak_torque_n_m: number | null,
/**
 * Speed of the shaft, degrees a second; unknown unless given.
 */
shaft_speed_deg_s: number | null,
/**
 * Part of the shaft's work that reaches the leaf; default 1.
 */
arm_efficiency: number | null, };

/**
 * Lean of the hinge axis out of plumb.
 */
export type Lean = {
/**
 * Lean out of plumb, degrees; default 0.
 */
angle_deg: number | null,
/**
 * Plan direction of downhill in the frame of the closed leaf, degrees; default 0. At rest the leaf hangs there.
 */
downhill_deg: number | null, };

/**
 * A gust at the gate.
 */
export type Wind = {
/**
 * Gust speed at the gate, m/s.
 */
speed_m_s: number,
/**
 * Force coefficient of the wind area.
 */
force_coefficient: number,
/**
 * Air density, kg/m³; default 1.225 (International Standard Atmosphere, sea level).
 */
air_density_kg_m3: number | null, };

/**
 * Everything `plan` needs to know. Serialises to the job document.
 */
export type Job = {
/**
 * Version of the document, [`super::SCHEMA`].
 */
schema: number,
/**
 * What the person calls the job.
 */
title: string | null,
/**
 * Side of the hinge; default right.
 */
hand: Hand | null,
/**
 * The leaf.
 */
leaf: Leaf,
/**
 * What resists at the hinges.
 */
hinges: Hinges,
/**
 * Lean of the hinge axis; default none.
 */
lean: Lean,
/**
 * The gust the drive must open against.
 */
wind: Wind,
/**
 * How far the leaf opens.
 */
swing: Swing,
/**
 * Crank and link, and where they are fixed; needed for a plan.
 */
arm: Arm | null,
/**
 * The operator's ratings.
 */
operator: Operator,
/**
 * Rated torque over demand that is asked for; default 1.5 (common practice, from memory).
 */
required_reserve: number | null,
/**
 * How many evenly spaced leaf angles the curve has, both ends included; default 91.
 */
samples: number | null, };

/**
 * Torques, forces and geometry at one leaf angle.
 */
export type CurvePoint = {
/**
 * Leaf angle, degrees from closed.
 */
leaf_deg: number,
/**
 * Crank angle from closed, degrees, signed, unwrapped.
 */
shaft_deg: number,
/**
 * Crank turned per leaf turned; `null` at a dead point.
 */
ratio: number | null,
/**
 * Lever of the link's line about the hinge, m.
 */
lever_m: number,
/**
 * Angle between link and the line hinge→bracket, folded to 0…90°.
 */
transmission_deg: number,
/**
 * Moment the drive must bring to the leaf when opening against the wind, N·m, positive opening.
 */
leaf_torque_open_n_m: number,
/**
 * The same when closing.
 */
leaf_torque_close_n_m: number,
/**
 * Shaft torque when opening against the wind, N·m, signed like the crank angle.
 */
shaft_torque_open_n_m: number,
/**
 * The same when closing.
 */
shaft_torque_close_n_m: number,
/**
 * Shaft torque when opening with the wind following, N·m.
 */
shaft_torque_open_following_n_m: number,
/**
 * The same when closing.
 */
shaft_torque_close_following_n_m: number,
/**
 * Force in the link when opening against the wind, N, positive in compression.
 */
link_force_open_n: number,
/**
 * The same when closing.
 */
link_force_close_n: number,
/**
 * Bracket pin in plan, m.
 */
bracket_x_m: number,
/**
 * Bracket pin in plan, m.
 */
bracket_y_m: number,
/**
 * Elbow in plan, m.
 */
elbow_x_m: number,
/**
 * Elbow in plan, m.
 */
elbow_y_m: number, };

/**
 * Which way the leaf moves.
 */
export type Direction = "open" | "close";

/**
 * The most the drive must hold back.
 */
export type Overrun = {
/**
 * Leaf angle, degrees.
 */
leaf_deg: number,
/**
 * Magnitude of the shaft torque that holds the leaf back, N·m.
 */
shaft_torque_n_m: number,
/**
 * Which way the leaf moves.
 */
direction: Direction, };

/**
 * Whether there is a limit in the range searched.
 */
export type WindLimitState = "found" | "over_without_wind" | "no_wind_load" | "above_search";

/**
 * The gust speed at which the utilisation is 1, the wind always against.
 */
export type WindLimit = {
/**
 * Whether there is one.
 */
state: WindLimitState,
/**
 * Gust speed at the gate, m/s; `null` unless found.
 */
speed_m_s: number | null, };

/**
 * Loads on the leaf about the hinge.
 */
export type Loads = {
/**
 * Friction of all hinges, N·m.
 */
hinge_friction_n_m: number,
/**
 * The job's gust, square to the leaf, N·m.
 */
wind_n_m: number,
/**
 * Moment of inertia about the hinge axis, kg·m².
 */
inertia_kg_m2: number, };

/**
 * Parts of the leaf torque at the deciding angle, as fractions of it; they sum to 1, all 0 where nothing is demanded.
 */
export type Shares = {
/**
 * Hinge friction.
 */
friction: number,
/**
 * Wind.
 */
wind: number,
/**
 * Lean of the hinge axis; negative where it helps.
 */
lean: number, };

/**
 * The deciding angle.
 */
export type Peak = {
/**
 * Leaf angle, degrees.
 */
leaf_deg: number,
/**
 * Magnitude of the shaft torque, N·m.
 */
shaft_torque_n_m: number,
/**
 * Which way the leaf moves.
 */
direction: Direction,
/**
 * What the leaf torque there is made of.
 */
shares: Shares, };

/**
 * How urgent a finding is.
 */
export type Severity = "stop" | "look" | "note";

/**
 * What a finding is about.
 */
export type FindingCode = "demand_over_rated" | "demand_over_peak" | "reserve_below_required" | "dead_point_closed" | "dead_point_open" | "transmission_low" | "leaf_drives_shaft" | "pull_bias_against_lean" | "lean_drift";

/**
 * What kind of quantity a number is; decides its units and how many digits are worth showing.
 */
export type Quantity = "mass" | "length" | "short_length" | "area" | "force" | "torque" | "speed" | "angle" | "angular_speed" | "density" | "inertia" | "ratio" | "percent" | "count";

/**
 * A number with a name and a quantity, for a sentence to use.
 */
export type NamedValue = {
/**
 * Name by which the sentence refers to it.
 */
name: string,
/**
 * The value in the document's unit.
 */
value: number,
/**
 * Kind of quantity.
 */
quantity: Quantity, };

/**
 * One finding.
 */
export type Finding = {
/**
 * What it is about.
 */
code: FindingCode,
/**
 * How urgent it is.
 */
severity: Severity,
/**
 * Numbers for the sentence.
 */
values: Array<NamedValue>, };

/**
 * Within the torque rating or not; no more than that is said.
 */
export type Verdict = "over" | "tight" | "within";

/**
 * Demand compared with the ratings.
 */
export type Rating = {
/**
 * Demand over rated torque.
 */
utilisation: number,
/**
 * Rated torque over demand; `null` where nothing is demanded.
 */
reserve: number | null,
/**
 * Word for it.
 */
verdict: Verdict,
/**
 * Demand over peak torque, until motion brings start and gust; `null` where the peak torque is unknown.
 */
peak_utilisation: number | null, };

/**
 * Everything computed from a job. Serialises to the plan document.
 */
export type Plan = {
/**
 * Version of the document.
 */
schema: number,
/**
 * Loads on the leaf.
 */
loads: Loads,
/**
 * Rows at evenly spaced leaf angles, both ends included.
 */
curve: Array<CurvePoint>,
/**
 * Where the shaft torque is largest over the continuous swing, wind against.
 */
peak: Peak,
/**
 * That torque against the operator's ratings.
 */
rating: Rating,
/**
 * Shaft angle from closed to open, degrees, magnitude.
 */
shaft_travel_deg: number,
/**
 * Least lever of the link about the hinge from a tenth of the swing on, m.
 */
least_lever_m: number,
/**
 * Gust at which the operator runs out.
 */
wind_limit: WindLimit,
/**
 * The most the drive must hold back with the wind following; `null` where the leaf never drives the shaft.
 */
overrun: Overrun | null,
/**
 * What to look at, most severe first.
 */
findings: Array<Finding>,
/**
 * Paths of the job's fields that were not said and are assumed.
 */
assumed: Array<string>, };

/**
 * What may stand in a field.
 */
export type Allowed = { "kind": "range",
/**
 * Least value, in the document's unit.
 */
least: number | null,
/**
 * Greatest value, in the document's unit.
 */
most: number | null,
/**
 * Kind of quantity.
 */
quantity: Quantity, } | { "kind": "one_of",
/**
 * The words.
 */
names: Array<string>, } | { "kind": "type",
/**
 * Name of the type as JSON has it.
 */
name: string, };

/**
 * What is wrong with a field or the geometry.
 */
export type FaultCode = "not_json" | "newer_schema" | "unknown_field" | "repeated_field" | "wrong_type" | "missing" | "not_one_of" | "out_of_range" | "outer_below_inner" | "outside_leaf" | "arm_too_short" | "arm_too_long" | "dead_point_inside" | "turns_back" | "undetermined";

/**
 * A value that would be taken.
 */
export type Example = number | string;

/**
 * One fault.
 */
export type Fault = {
/**
 * Dotted path of the field, empty for the document as a whole.
 */
path: string,
/**
 * What is wrong.
 */
code: FaultCode,
/**
 * What stood there, as text; `null` where nothing did.
 */
found: string | null,
/**
 * What may stand there.
 */
allowed: Allowed | null,
/**
 * A value that would be taken.
 */
example: Example | null,
/**
 * Numbers for the sentence: angles, gaps.
 */
values: Array<NamedValue>, };

/**
 * A job that cannot be planned, with every fault that could be found at once.
 */
export type Invalid = {
/**
 * Never empty.
 */
errors: Array<Fault>, };

/**
 * The rule of one number field.
 */
export type FieldRule = {
/**
 * Dotted path in the job document.
 */
path: string,
/**
 * Kind of quantity; the value stands in the document's unit (SI, degrees).
 */
quantity: Quantity,
/**
 * Least allowed value, included; `null` is no limit.
 */
least: number | null,
/**
 * Greatest allowed value, included; `null` is no limit.
 */
most: number | null,
/**
 * Whether the field must be given (within its `hinges` kind).
 */
required: boolean,
/**
 * What is assumed where the field is absent; `null` where that depends on other fields or nothing is assumed.
 */
default: number | null,
/**
 * A plausible value.
 */
example: number, };

/**
 * The system of units a person reads and types in.
 */
export type System = "metric" | "us";

/**
 * Why a typed text is not a number of the wanted quantity.
 */
export type ReadErrorCode = "empty" | "not_a_number" | "ambiguous";

/**
 * A typed text that could not be understood.
 */
export type ReadError = {
/**
 * Why.
 */
code: ReadErrorCode, };

/**
 * Words on the drawings; the page's string tables hold them in each language under `drawing`.
 */
export type Labels = {
/**
 * Axis title, without unit.
 */
leaf_angle: string,
/**
 * Axis title, without unit.
 */
shaft_torque: string,
/**
 * On the curve of the demand while opening.
 */
opening: string,
/**
 * On the curve of the demand while closing.
 */
closing: string,
/**
 * Before the rated torque, on its line.
 */
rated: string,
/**
 * Before the peak torque, on its line.
 */
peak: string,
/**
 * At the closed leaf.
 */
closed: string,
/**
 * At the open leaf.
 */
open: string,
/**
 * At the hinge.
 */
hinge: string,
/**
 * At the operator's shaft.
 */
shaft: string,
/**
 * Before the crank's length.
 */
crank: string,
/**
 * Before the link's length.
 */
link: string, };

/**
 * A colour.
 */
export type Colour = string;

/**
 * Colours of a drawing, `"#rrggbb"`.
 */
export type Palette = {
/**
 * The ground.
 */
paper: Colour,
/**
 * Outlines, dimensions, text.
 */
ink: Colour,
/**
 * Grid lines and what stands behind.
 */
faint: Colour,
/**
 * Demand while opening.
 */
opening: Colour,
/**
 * Demand while closing.
 */
closing: Colour,
/**
 * What the operator can give.
 */
limit: Colour,
/**
 * The position looked at.
 */
cursor: Colour,
/**
 * The leaf.
 */
leaf: Colour, };

/**
 * How a drawing is to be made.
 */
export type View = {
/**
 * Width, CSS px; 160 to 8,000.
 */
width: number,
/**
 * Height, CSS px; 160 to 8,000.
 */
height: number,
/**
 * Device px per CSS px; 0.25 to 8.
 */
pixel_ratio: number,
/**
 * The cursor: the leaf angle looked at, degrees, held inside the swing.
 */
leaf_deg: number,
/**
 * Units of the numbers.
 */
system: System,
/**
 * Colours.
 */
palette: Palette,
/**
 * Words.
 */
labels: Labels, };

/**
 * Where the plot lies inside the canvas, CSS px: the page places its own handles by it.
 */
export type PlotArea = {
/**
 * Left edge.
 */
left: number,
/**
 * Upper edge.
 */
top: number,
/**
 * Width.
 */
width: number,
/**
 * Height.
 */
height: number, };
