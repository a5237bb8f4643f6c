/**
 * The documents and the binding's values. Written from the Rust types, do not edit; after a change there:
 * PINTLE_BLESS=1 cargo test -p pintle-tests --test page_types
 */

/**
 * What a part could meet.
 */
export type Against = "leaf" | "hinge_post" | "obstacle";

/**
 * What a set-out is to make as small as possible.
 */
export type Aim = "least_shaft_torque" | "least_link_force" | "least_shaft_travel" | "nearest_place";

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
 * A stretch of leaf angles, degrees.
 */
export type AngleSpan = {
/**
 * Its first leaf angle.
 */
from_deg: number,
/**
 * Its last.
 */
to_deg: number, };

/**
 * Crank and link in plan, and where they are fixed.
 */
export type Arm = {
/**
 * Shaft along the closed leaf from the hinge line, m.
 */
shaft_x_m: number,
/**
 * Shaft square to the closed leaf from the axis line, towards the side the leaf opens to, m.
 */
shaft_y_m: number,
/**
 * Bracket pin along the leaf from the hinge line of the closed leaf, m.
 */
bracket_u_m: number,
/**
 * Bracket pin square to the leaf from the axis line of the closed leaf, on its opening side, m.
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
 * Crank and link as they are bought: how far each can be set, in which steps, what their joints allow.
 */
export type ArmKit = {
/**
 * Crank, least and most, m; as the site asks where it is not said.
 */
crank_m: [number, number] | null,
/**
 * Link, least and most, m; as the site asks where it is not said.
 */
link_m: [number, number] | null,
/**
 * Lengths are whole multiples of it, m; any length where it is not said.
 */
step_m: number | null,
/**
 * Rise and fall of the bracket pin that its joints allow, in all, m.
 */
joint_allowance_m: number | null,
/**
 * What joints at both ends of the crank take off its tubes, together, m.
 */
crank_ends_m: number | null,
/**
 * What joints at both ends of the link take off its tubes, together, m.
 */
link_ends_m: number | null,
/**
 * Half the width of crank and link in plan, m.
 */
half_width_m: number | null, };

/**
 * The arm as it was built; what is not said is as planned. The side of the elbow is not a matter of measuring.
 */
export type AsBuilt = {
/**
 * Line that what is square to the leaf was measured from: `shaft_y_m` and `bracket_v_m`; default the axis line, as for the arm.
 */
from: BuiltFrom | null,
/**
 * Shaft along the closed leaf from the hinge axis, m.
 */
shaft_x_m: number | null,
/**
 * Shaft square to the closed leaf, towards the side it opens to, m from the line of `from`.
 */
shaft_y_m: number | null,
/**
 * Bracket pin along the leaf from the hinge axis, m.
 */
bracket_u_m: number | null,
/**
 * Bracket pin square to the leaf, towards its opening side, m from the line of `from`.
 */
bracket_v_m: number | null,
/**
 * Crank, shaft to elbow, m.
 */
crank_m: number | null,
/**
 * Link, elbow to bracket pin, m.
 */
link_m: number | null, };

/**
 * Edition of the standard: it decides what load level the mapped speeds have, and the profile.
 */
export type Asce7Edition = "7-05" | "7-10" | "7-16" | "7-22";

/**
 * An open lattice by ASCE 7.
 */
export type Asce7Open = {
/**
 * Flat-sided or round.
 */
bars: BarShape,
/**
 * Width or diameter of a bar, m.
 */
bar_m: number,
/**
 * Distance of the bars, centre to centre, m.
 */
pitch_m: number, };

/**
 * A wall by ASCE 7, cases A and B; case C is excluded.
 */
export type Asce7Wall = {
/**
 * Solid over gross area, at least 0.7.
 */
solidity: number,
/**
 * Height of the leaf over height of its top; default 1.
 */
clearance: number | null,
/**
 * Case B: the resultant 0.2 of the length off the middle, towards the latch edge; default yes.
 */
eccentric: boolean | null, };

/**
 * Velocity pressure and gust effect by ASCE 7.
 */
export type Asce7Wind = {
/**
 * Edition the mapped speed belongs to.
 */
edition: Asce7Edition,
/**
 * Load level wanted.
 */
level: LoadLevel,
/**
 * Exposure category.
 */
exposure: Exposure,
/**
 * Mapped speed, three-second gust at 10 m in exposure C, m/s.
 */
speed_m_s: number,
/**
 * Top of the leaf over ground, m.
 */
height_m: number,
/**
 * Topographic factor `K_zt`; default 1.
 */
topographic: number | null,
/**
 * Directionality factor `K_d`; default 0.85.
 */
directionality: number | null,
/**
 * Importance factor, 7-05 only; default 1.
 */
importance: number | null,
/**
 * Gust effect factor `G`; default 0.85 (rigid).
 */
gust_effect: number | null, };

/**
 * The worst of an arm at the 64 corners of the tape's errors.
 */
export type AtCorners = {
/**
 * Error of each dimension either way, m.
 */
error_m: number,
/**
 * Error of the link, m: the same unless it is set last.
 */
link_error_m: number,
/**
 * Largest peak shaft torque, N·m.
 */
shaft_torque_n_m: number,
/**
 * Largest shaft angle from closed to open, degrees.
 */
shaft_travel_deg: number,
/**
 * Least lever from a tenth of the swing on, m.
 */
least_lever_m: number,
/**
 * Straightness, least and most.
 */
straightness: [number, number],
/**
 * Link from square to the open leaf, least and most, degrees.
 */
off_square_deg: [number, number],
/**
 * Least distance of the arm's edge from what stops it, m; `null` where nothing does.
 */
clearance_m: number | null, };

/**
 * What low, likely and high friction make of the demand, wind against.
 */
export type Band = {
/**
 * The coefficients.
 */
friction: FrictionRange,
/**
 * Largest shaft torque with low, likely and high friction, N·m.
 */
peak_n_m: FrictionRange,
/**
 * Verdict at the high end; the plan's own verdict is at the likely one.
 */
verdict_high: Verdict,
/**
 * Rows at the curve's leaf angles.
 */
curve: Array<BandPoint>, };

/**
 * Shaft torques at one leaf angle, N·m, signed like the crank angle.
 */
export type BandPoint = {
/**
 * Leaf angle, degrees.
 */
leaf_deg: number,
/**
 * Opening, low friction.
 */
shaft_torque_open_low_n_m: number,
/**
 * Opening, high friction.
 */
shaft_torque_open_high_n_m: number,
/**
 * Closing, low friction.
 */
shaft_torque_close_low_n_m: number,
/**
 * Closing, high friction.
 */
shaft_torque_close_high_n_m: number, };

/**
 * Solid flat or square bar, single board.
 */
export type Bar = {
/**
 * Density, kg/m³; default 7850 (steel).
 */
density_kg_m3: number | null,
/**
 * Where the pieces sit.
 */
place: MemberPlace,
/**
 * Side the wind sees, m.
 */
face_m: number,
/**
 * Other side, m; default the same.
 */
depth_m: number | null, };

/**
 * What the bars of an open lattice look like to the wind.
 */
export type BarShape = "flat" | "round";

/**
 * A rectangle of anchor holes about the shaft, along and across the direction the base is laid in, and the plate around it.
 */
export type BasePattern = {
/**
 * Spacing of the holes along the base, m.
 */
along_m: number,
/**
 * Spacing of the holes across it, m.
 */
across_m: number,
/**
 * Middle of the holes from the shaft, along the base towards the elbow of the closed arm, m; default 0.
 */
offset_along_m: number | null,
/**
 * Middle of the holes from the shaft, a quarter turn counter-clockwise from that, m; default 0.
 */
offset_across_m: number | null,
/**
 * From a hole's middle to the edge of the plate, m; default 0.
 */
edge_m: number | null,
/**
 * Diameter of the anchors, m.
 */
anchor_m: number | null, };

/**
 * What keeps an operator going without supply.
 */
export type Battery = {
/**
 * Voltage, V.
 */
voltage_v: number,
/**
 * What it holds, A·h.
 */
capacity_ah: number,
/**
 * Part of that which may be taken; unknown unless given.
 */
usable: number | null,
/**
 * How long it takes to charge, s; unknown unless given.
 */
charging_s: number | null, };

/**
 * The wind of fixed bearing at one leaf angle.
 */
export type BearingPoint = {
/**
 * Leaf angle, degrees.
 */
leaf_deg: number,
/**
 * Moment of the wind, N·m, positive opening.
 */
wind_n_m: number,
/**
 * Shaft torque when opening, N·m, signed like the crank angle.
 */
shaft_torque_open_n_m: number,
/**
 * The same when closing.
 */
shaft_torque_close_n_m: number, };

/**
 * A wind of fixed bearing, by the law of [`crate::leaf::normal_component`].
 */
export type BearingWind = {
/**
 * Where the shaft torque is largest, either way.
 */
peak: Overrun,
/**
 * The most the drive must hold back; `null` where the leaf never drives the shaft.
 */
overrun: Overrun | null,
/**
 * Rows at the curve's leaf angles.
 */
curve: Array<BearingPoint>, };

/**
 * A Beaufort number, taken at its fastest mean.
 */
export type BeaufortWind = {
/**
 * 0 to 11; 12 has no upper end.
 */
number: number,
/**
 * Gust over ten-minute mean.
 */
gust_factor: number,
/**
 * Mean at the gate's height over mean at 10 m.
 */
height_factor: number, };

/**
 * The latch edge meeting something while some gap is left.
 *
 * The gap is the straight line from the latch edge to what the gate closes on, which lies `site.latch_gap_m` (`c`) beyond the closed edge:
 * `gap² = c² + 4·L·(L + c)·sin²(θ/2)`, the chord `2·L·sin(θ/2)` where the gate closes flush.
 */
export type Blow = {
/**
 * Gap that is left, m; `null` for the hardest blow where more than 500 mm is left.
 */
gap_m: number | null,
/**
 * Leaf angle, degrees; `null` where more is left and motion is not described.
 */
leaf_deg: number | null,
/**
 * Greatest speed of the latch edge there, prescribed or driven, the wind against or behind, m/s; `null` where motion is not described.
 */
edge_speed_m_s: number | null,
/**
 * Mass that stands for leaf and drive at the latch edge, kg: `(I + J·n²)/L²`; of the leaf alone where the drive is not known, `null` at a
 * dead point.
 */
edge_mass_kg: number | null,
/**
 * Force of the blow, N, the motor's push apart.
 */
impact_n: number | null,
/**
 * How far what is met gives then, m.
 */
compression_m: number | null,
/**
 * Push of the blocked edge there, N.
 */
push_n: number | null,
/**
 * What the blow may come to for `dynamic_time_s` at the most, N: the typed limit for gaps of 50 to 500 mm, 1,400 N beyond.
 */
dynamic_limit_n: number,
/**
 * Edge speed that keeps it, m/s.
 */
speed_at_limit_m_s: number | null,
/**
 * Compression a safety edge needs to keep it, m.
 */
edge_travel_m: number | null, };

/**
 * Boards with gaps over a part of the leaf.
 */
export type Boards = {
/**
 * Density, kg/m³; default 7850 (steel): say it for timber.
 */
density_kg_m3: number | null,
/**
 * Where they sit; needs a height.
 */
place: MemberPlace,
/**
 * Thickness, m.
 */
thickness_m: number,
/**
 * Width of a board, m.
 */
face_m: number,
/**
 * Gap between boards, m; default 0.
 */
gap_m: number | null, };

/**
 * The window. Never counted as protection of people.
 */
export type Breakaway = {
/**
 * Always false: protection of people is sensing together with a measured force.
 */
protects_people: boolean,
/**
 * Whether there is a window.
 */
state: WindowState,
/**
 * Largest shaft torque of normal running: wind against, wind behind held back, start, braking and inertia where motion is described, N·m.
 */
running_torque_n_m: number,
/**
 * Least slip torque: that times the hold factor, N·m.
 */
least_slip_n_m: number,
/**
 * Highest slip torque, and what decides it; `null` without limits.
 */
highest: HighestSlip | null,
/**
 * Leaf angle up to which the arm is in its toggle zone, degrees: there one slip torque gives the leaf many times the force it gives half
 * open, and link and bracket have no limit at all at a dead point.
 */
toggle_to_leaf_deg: number,
/**
 * The trial half open, drive off, square to the leaf, in calm air.
 */
trial: Trial,
/**
 * What would open the window, tried one at a time, and in pairs where no single change does; empty where it is open.
 */
remedies: Array<Remedy>,
/**
 * Slip torque the rows are for, N·m: the one set, or else the least.
 */
curve_slip_n_m: number,
/**
 * Rows at the curve's leaf angles.
 */
curve: Array<SlipPoint>, };

/**
 * The slipping clutch or current limit, and what it has to let go before.
 */
export type BreakawayFacts = {
/**
 * Slip torque it is set to, at the operator's shaft, N·m; unknown unless given.
 */
slip_torque_n_m: number | null,
/**
 * Slip torque over the largest torque of normal running; default 1.25 (common practice, no source).
 */
hold_factor: number | null,
/**
 * Part of a limit below that may be reached; default 0.8 (common practice, no source).
 */
release_factor: number | null,
/**
 * Most moment about the hinge the leaf stands, N·m; no limit unless given.
 */
leaf_moment_n_m: number | null,
/**
 * Most force the link stands, N; no limit unless given.
 */
link_force_n: number | null,
/**
 * Most force the bracket stands, N; no limit unless given.
 */
bracket_force_n: number | null,
/**
 * Most torque the operator's shaft and gear stand, N·m; no limit unless given.
 */
gearbox_torque_n_m: number | null,
/**
 * Hinge axis to where the leaf is pushed to test it, m; default the leaf's length.
 */
push_radius_m: number | null, };

/**
 * The line along the leaf that a built dimension was measured from.
 */
export type BuiltFrom = "hinge_axis" | "leaf_face";

/**
 * A limit and an amount.
 */
export type Change = {
/**
 * The limit.
 */
limit: Limit,
/**
 * By how much, in the unit of the limit's field.
 */
by: number, };

/**
 * One measured number beside its plan.
 */
export type Check = {
/**
 * Path of the measured number in the job.
 */
path: string,
/**
 * What kind of number it is; values below are in the document's unit.
 */
quantity: Quantity,
/**
 * The planned value; `null` where the job plans none.
 */
planned: number | null,
/**
 * Least value that passes; `null` is no limit.
 */
least: number | null,
/**
 * Greatest value that passes; `null` is no limit.
 */
most: number | null,
/**
 * What was measured; `null` where nothing was.
 */
measured: number | null,
/**
 * Where the range comes from.
 */
source: Source,
/**
 * The verdict.
 */
verdict: CheckVerdict, };

/**
 * What comes of a comparison.
 */
export type CheckVerdict = "pass" | "look_again" | "not_measured" | "not_planned";

/**
 * Distances through the swing.
 */
export type Clearances = {
/**
 * Least distance of every moving part from everything it could meet, the least first. The link's distance from the leaf is that of
 * its centre-line, since it ends on the leaf at the bracket.
 */
gaps: Array<Gap>,
/**
 * The gap between the leaf and the post it is hung on, where the job says where that is.
 */
hinge_gap: HingeGap | null,
/**
 * What is left between the open leaf and each obstacle beside it.
 */
open: Array<OpenGap>,
/**
 * The ground crank and elbow sweep.
 */
sweep: ElbowSweep, };

/**
 * How far the leaf runs on from half open at full speed after the drive lets go, motor and gear turning with it where they are known.
 *
 * A gear that does not back-drive stops it sooner; where the job says that it does not, nothing is reckoned.
 */
export type Coast = {
/**
 * Leaf speed at release, degrees a second.
 */
leaf_speed_deg_s: number,
/**
 * Whether it stops by itself in calm air.
 */
calm: CoastState,
/**
 * Leaf angle it runs on, degrees, at most to the stop; `null` where nothing brakes it, or a gear that does not back-drive.
 */
calm_leaf_deg: number | null,
/**
 * Whether it stops by itself with the wind behind it.
 */
following: CoastState,
/**
 * Leaf angle it runs on then, degrees.
 */
following_leaf_deg: number | null, };

/**
 * How a leaf that was let go ends.
 */
export type CoastState = "stops" | "reaches_stop" | "runs_on" | "gear_holds";

/**
 * How a thrust collar carries its load.
 */
export type Collar = "uniform_pressure" | "uniform_wear";

/**
 * A colour.
 */
export type Colour = string;

/**
 * The commissioning record against the plan.
 */
export type Commissioning = {
/**
 * Numbers, in the order they are taken.
 */
checks: Array<Check>,
/**
 * What was tried and done.
 */
steps: Array<Step>, };

/**
 * What a force on a person is estimated with. An estimate never stands in for a measurement.
 */
export type Contact = {
/**
 * Stiffness of what the leaf meets, N/m; default 500 000, that of the measuring device (EN 12445, superseded; from memory).
 */
stiffness_n_per_m: number | null,
/**
 * Dynamic force that is not to be exceeded at gaps of 50 to 500 mm, for at most 0.75 s, N; default 400 (EN 12453:2001 Annex A, superseded; from
 * memory). Wider gaps are held to 1,400 N of the same.
 */
dynamic_limit_n: number | null,
/**
 * Static force that is not to be exceeded after those 0.75 s, at any gap, N; default 150 (the same).
 */
static_limit_n: number | null,
/**
 * Time from contact until the drive has let go, s; default 0.3 (common practice, no source).
 */
response_s: number | null,
/**
 * Compression the safety edge offers, m; unknown unless given.
 */
edge_travel_m: number | null,
/**
 * Distance from the hinge axis at which a hand may be caught, m; default 0.3 (common practice, no source).
 */
near_m: number | null, };

/**
 * How a rectangular hollow section's corners are reckoned.
 */
export type CornerRule = "en10219" | "aisc";

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
 * Shaft torque with which the drive holds the leaf back when opening with the wind following, N·m, signed like the crank angle; 0 where
 * the leaf does not drive the shaft.
 */
overrun_open_n_m: number,
/**
 * The same when closing.
 */
overrun_close_n_m: number,
/**
 * Shaft torque that keeps the leaf at a stand here in the job's wind, from the side that asks more, N·m, magnitude. Losses of the arm
 * help, friction of the hinges is not counted on.
 */
holding_n_m: number,
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
 * What moving one dimension does.
 */
export type DimensionCost = {
/**
 * Path of the dimension.
 */
path: string,
/**
 * Change of each figure per metre, degrees a metre for angles; `null` where the arm stops working within a micrometre, as a straight
 * one does.
 */
per_m: Fitted | null,
/**
 * With the dimension short by the error; `null` where that arm does not work.
 */
short: Fitted | null,
/**
 * With the dimension long by the error.
 */
long: Fitted | null, };

/**
 * Which way the leaf moves.
 */
export type Direction = "open" | "close";

/**
 * Drag besides the hinges.
 */
export type Drag = {
/**
 * Moment of seals and brushes about the hinge through the whole swing, N·m; default 0.
 */
seal_n_m: number | null,
/**
 * Moment of latch or keeper about the hinge near closed, N·m; default 0.
 */
latch_n_m: number | null,
/**
 * Leaf angle up to which the latch drags, degrees; default 2.
 */
latch_deg: number | null,
/**
 * Load on a support wheel, N; default 0.
 */
wheel_load_n: number | null,
/**
 * Hinge axis to the wheel, m; default 0.
 */
wheel_radius_m: number | null,
/**
 * Rolling resistance of the wheel over its load; default 0.05.
 */
wheel_coefficient: number | null, };

/**
 * The motor's runs from limit to limit: asked for the speed of ramps and slow zones, it gives what its line allows.
 */
export type Driven = {
/**
 * The motor as it is at the operator's shaft and at the supply it has.
 */
motor: Motor,
/**
 * Opening against the wind.
 */
opening: DrivenRun,
/**
 * Closing against the wind.
 */
closing: DrivenRun,
/**
 * Opening with the wind behind.
 */
opening_following: DrivenRun,
/**
 * Closing with the wind behind.
 */
closing_following: DrivenRun, };

/**
 * The leaf at one time of a driven run.
 */
export type DrivenPoint = {
/**
 * Time from the start, s.
 */
time_s: number,
/**
 * Shaft angle from closed, degrees, signed.
 */
shaft_deg: number,
/**
 * Leaf angle from closed, degrees.
 */
leaf_deg: number,
/**
 * Shaft speed, degrees a second, signed like the shaft angle.
 */
shaft_speed_deg_s: number,
/**
 * Speed of the latch edge, m/s, magnitude.
 */
edge_speed_m_s: number,
/**
 * Torque of motor and gear at the operator's shaft, N·m, signed like the shaft angle.
 */
shaft_torque_n_m: number, };

/**
 * One way, the motor asked for the speed of ramps and slow zones, and giving what its line allows.
 */
export type DrivenRun = {
/**
 * How it ends.
 */
state: DrivenState,
/**
 * When, s; a leaf stands from when its shaft is slower than a thousandth of the no-load speed, and stays so for ten seconds.
 */
time_s: number,
/**
 * Leaf angle then, degrees.
 */
leaf_deg: number,
/**
 * Greatest speed of the latch edge, m/s, of the steps taken.
 */
edge_speed_m_s: number,
/**
 * Speed of the latch edge at the end, m/s.
 */
arrival_edge_speed_m_s: number,
/**
 * Where the energy went.
 */
energy: EnergyBalance,
/**
 * Rows at evenly spaced times, between the steps by a cubic.
 */
curve: Array<DrivenPoint>, };

/**
 * How a driven run ends.
 */
export type DrivenState = "arrives" | "stalls" | "driven_back" | "creeps";

/**
 * Cycles, one opening and one closing each, asked for and rated.
 */
export type Duty = {
/**
 * Most cycles expected in an hour.
 */
cycles_per_hour: number | null,
/**
 * Most cycles expected in a day.
 */
cycles_per_day: number | null,
/**
 * Cycles an hour the operator is rated for.
 */
rated_cycles_per_hour: number | null,
/**
 * Cycles a day the operator is rated for.
 */
rated_cycles_per_day: number | null, };

/**
 * Cycles, one opening and one closing each, up to a temperature.
 */
export type DutyRating = {
/**
 * In air up to this temperature, °C; in any where it is not said.
 */
up_to_c: number | null,
/**
 * Cycles an hour.
 */
cycles_per_hour: number | null,
/**
 * Cycles a day.
 */
cycles_per_day: number | null, };

/**
 * Cycles against the operator's rating.
 */
export type DutyUse = {
/**
 * Running time of one cycle, s: once open, once closed, in the prescribed motion.
 */
cycle_s: number,
/**
 * Part of the busiest hour in which it runs.
 */
running: number | null,
/**
 * Cycles an hour over the rated ones.
 */
hour_utilisation: number | null,
/**
 * Cycles a day over the rated ones.
 */
day_utilisation: number | null, };

/**
 * Side of the line from shaft to bracket, looking along it.
 */
export type Elbow = "left" | "right";

/**
 * Which sides of the line shaft→bracket the elbow may be on.
 */
export type ElbowChoice = "left" | "right" | "either";

/**
 * The area to keep clear of people and things while the leaf moves.
 */
export type ElbowSweep = {
/**
 * Area, m².
 */
area_m2: number,
/**
 * Its outline in the frame, m, counter-clockwise, not closed; arcs are drawn round by chords of five degrees at most.
 */
outline: Array<[number, number]>, };

/**
 * A plane lattice by EN 1991-1-4:2005 + A1:2010; recommended values, which a national annex replaces.
 */
export type En1991Lattice = {
/**
 * Solid over gross area, at most 0.8.
 */
solidity: number,
/**
 * End-effect factor by the slenderness of the leaf; default 1 (no wind round the ends).
 */
end_effect: number | null, };

/**
 * A wall by EN 1991-1-4:2005 + A1:2010, its zones taken as a moment about the hinge; recommended values, which a national annex replaces.
 */
export type En1991Wall = {
/**
 * Solid over gross area, at least 0.8.
 */
solidity: number,
/**
 * Shelter factor of a wall upwind; default 1 (none). It does not hold within the leaf's height of the latch edge, which is the wall's free
 * end.
 */
shelter_factor: number | null,
/**
 * Whether the wall goes round a corner at the latch edge; default no.
 */
returns: boolean | null, };

/**
 * Peak velocity pressure by EN 1991-1-4:2005 + A1:2010, recommended values; a national annex replaces them and goes first.
 */
export type En1991Wind = {
/**
 * Terrain category.
 */
terrain: Terrain,
/**
 * Basic wind velocity with its direction and season factors, m/s.
 */
basic_m_s: number,
/**
 * Top of the leaf over ground, m.
 */
height_m: number,
/**
 * Orography factor `c_o`; default 1.
 */
orography: number | null,
/**
 * Yearly probability of being exceeded; default 0.02 (50 years).
 */
yearly_probability: number | null, };

/**
 * A positive stop at a limit that the drive passes without its last ramp.
 */
export type EndStop = {
/**
 * Edge speed at the limit from the speed before the last ramp, m/s.
 */
edge_speed_m_s: number,
/**
 * Kinetic energy of leaf and drive then, J; of the leaf alone where `drive_inertia_kg_m2` is not known.
 */
energy_j: number,
/**
 * Force of the stop that takes it, N, the motor's push apart; `null` without its stiffness.
 */
force_n: number | null,
/**
 * Edge speed with the slow zone missed too, m/s.
 */
full_edge_speed_m_s: number,
/**
 * Kinetic energy then, J.
 */
full_energy_j: number,
/**
 * Force then, N.
 */
full_force_n: number | null, };

/**
 * Where the motor's work went, J.
 */
export type EnergyBalance = {
/**
 * Work of motor and gear at the operator's shaft; negative where they brake.
 */
motor_j: number,
/**
 * Work of the wind on the leaf; negative against it.
 */
wind_j: number,
/**
 * Work of the weight on the leaf.
 */
gravity_j: number,
/**
 * Taken by hinges and drag.
 */
friction_j: number,
/**
 * Taken by the arm.
 */
arm_loss_j: number,
/**
 * Kinetic energy of leaf, motor and gear at the end.
 */
kinetic_j: number,
/**
 * What is left unexplained, over the largest of the above.
 */
error: number, };

/**
 * The site: class, zones, means of protection.
 */
export type Entrapment = {
/**
 * Class of use; `null` while an answer that decides it is missing.
 */
class: UseClass | null,
/**
 * Where the classes come from.
 */
class_source: Source,
/**
 * Zones, each at the leaf angle where it is worst.
 */
zones: Array<Zone>,
/**
 * Means wanted and counted, opening first.
 */
means: [MeansCount, MeansCount],
/**
 * Zones that no means reaches.
 */
unreached: Array<ZoneKind>,
/**
 * What each sensor whose area is described reaches, in plan.
 */
sensors: Array<SensorReach>,
/**
 * Leaf angles at which no such sensor senses the latch edge, opening first; the whole swing where there is none.
 */
edge_unseen: [Array<AngleSpan>, Array<AngleSpan>], };

/**
 * A value that would be taken.
 */
export type Example = number | string | [number, number];

/**
 * Exposure category of the surroundings.
 */
export type Exposure = "B" | "C" | "D";

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
 * What is wrong with a field or the geometry.
 */
export type FaultCode = "not_json" | "damaged_link" | "newer_link" | "newer_schema" | "unknown_field" | "repeated_field" | "wrong_type" | "missing" | "not_one_of" | "out_of_range" | "least_above_most" | "outer_below_inner" | "ramp_binds" | "outside_leaf" | "wall_too_thick" | "outside_shape" | "no_members" | "too_few_points" | "not_rising" | "no_motor_curve" | "no_current_known" | "said_twice" | "half_of_pair" | "arm_too_short" | "arm_too_long" | "dead_point_inside" | "turns_back" | "undetermined" | "meant_kilonewton_metres" | "meant_millimetres" | "peak_below_rated" | "repeated_id";

/**
 * The rule of one number field.
 */
export type FieldRule = {
/**
 * Dotted path in the job document; of a list's item without its place (`leaf.members.wall_m`). The storm keeps the rules of the wind.
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
example: number,
/**
 * What people usually say where silence means none; common practice, no source.
 */
usual: number | null,
/**
 * Key beside the field that a required one may be replaced by: a block or word from which the value follows.
 */
unless: string | null, };

/**
 * One finding.
 */
export type Finding = {
/**
 * What was found: what to do about it stands in the string tables under the same name.
 */
code: FindingCode,
/**
 * The one subject it belongs to.
 */
about: Subject,
/**
 * Path of the field that would change it; `null` where none would.
 */
path: string | null,
/**
 * How urgent it is.
 */
severity: Severity,
/**
 * Numbers for the sentence.
 */
values: Array<NamedValue>, };

/**
 * What was found.
 */
export type FindingCode = "demand_over_rated" | "demand_over_peak" | "reserve_below_required" | "dead_point_closed" | "dead_point_open" | "transmission_low" | "leaf_drives_shaft" | "pull_bias_against_lean" | "lean_drift" | "ramp_runs_shut" | "ramp_runs_open" | "ground_touches" | "bracket_rise" | "wind_at_strength_level" | "wind_solidity_differs" | "storm_solidity_differs" | "band_over_rated" | "arm_hits" | "arm_hits_leaf" | "leaf_hits" | "operator_hits" | "operator_hits_leaf" | "arm_width_said_twice" | "leaf_thickness_said_twice" | "arm_crushes" | "elbow_nears_leaf" | "open_gap_small" | "hinge_gap_closes" | "tape_error_costs" | "tape_error_breaks" | "built_broken" | "built_over_rated" | "built_reserve_below_required" | "motion_over_peak" | "motion_over_rated" | "ramps_too_long" | "coast_runs_on" | "hand_force_high" | "opening_stalls" | "closing_stalls" | "opening_driven_back" | "closing_driven_back" | "opening_creeps" | "closing_creeps" | "duty_exceeded" | "duty_no_time" | "breakaway_not_for_people" | "breakaway_toggle_zone" | "breakaway_no_window" | "breakaway_no_limit" | "breakaway_slips_early" | "breakaway_slips_late" | "holding_gives_way" | "holding_unknown" | "holding_is_no_lock" | "storm_moves_open_leaf" | "open_leaf_holding_unknown" | "force_must_be_measured" | "push_over_limit" | "impact_over_limit" | "impact_over_wide_limit" | "response_too_long" | "edge_travel_short" | "class_undecided" | "means_missing_opening" | "means_missing_closing" | "zones_unreached" | "sensors_miss_zones" | "dynamic_force_over" | "static_force_over" | "signs_missing" | "pedestrian_way_missing";

/**
 * An arm in the figures a person sets and checks.
 */
export type Fitted = {
/**
 * Rated torque over demand; `null` where nothing is demanded.
 */
reserve: number | null,
/**
 * Direction of the crank with the leaf closed, degrees from the closed leaf, counter-clockwise.
 */
closed_deg: number,
/**
 * The same with the leaf open; unwrapped from closed.
 */
open_deg: number,
/**
 * Distance shaft to bracket when closed over crank + link.
 */
straightness: number,
/**
 * Bend at the elbow when closed, degrees; 0 is straight.
 */
bend_deg: number,
/**
 * Link from square to the open leaf, degrees, positive where the bracket end leans towards the latch.
 */
off_square_deg: number, };

/**
 * Estimates of the force on a person.
 */
export type ForceOnPerson = {
/**
 * Always true: every number here must be measured on the finished gate with a calibrated instrument.
 */
must_be_measured: boolean,
/**
 * Torque at the shaft the push is reckoned with, N·m.
 */
torque_n_m: number,
/**
 * Which torque that is.
 */
torque_from: PushTorque,
/**
 * Inertia of motor and gear at the operator's shaft that blows are reckoned with, kg·m²; `null` where the job describes no motor: they
 * are then those of the leaf alone, and the gate's are harder.
 */
drive_inertia_kg_m2: number | null,
/**
 * Mass that stands for the leaf alone at its latch edge, kg.
 */
edge_mass_kg: number,
/**
 * Largest push of the latch edge outside the toggle zone and at the gaps of `blows`, N.
 */
edge_push_n: number,
/**
 * Leaf angle there, degrees.
 */
edge_push_leaf_deg: number,
/**
 * The blow closing at gaps of 50, 300 and 500 mm, as far as the leaf comes by them; then, either way, the hardest where more is left.
 */
blows: Array<Blow>,
/**
 * Gap up to which the typed dynamic limit holds, and beyond which the larger one does, m.
 */
wide_gap_m: number,
/**
 * Compression a safety edge needs for every one of them, m; `null` where motion is not described.
 */
edge_travel_m: number | null,
/**
 * Longest time a dynamic limit may be made use of, s; then the static one holds.
 */
dynamic_time_s: number,
/**
 * Static limit, N: what may remain after that time.
 */
static_limit_n: number,
/**
 * Where the limits' defaults come from.
 */
limits_source: Source,
/**
 * Where the way of measuring comes from.
 */
measuring_source: Source,
/**
 * Rows at the curve's leaf angles.
 */
curve: Array<ForcePoint>, };

/**
 * Estimates at one leaf angle.
 */
export type ForcePoint = {
/**
 * Leaf angle, degrees.
 */
leaf_deg: number,
/**
 * Push of the latch edge on what blocks it, N; `null` at a dead point, where it has no bound.
 */
edge_n: number | null,
/**
 * Push at the middle of the leaf.
 */
middle_n: number | null,
/**
 * Push near the hinge, where it is greatest.
 */
near_n: number | null,
/**
 * Distance from the hinge axis within which the push exceeds the static limit, m.
 */
over_static_within_m: number | null,
/**
 * Speed of the latch edge at the operator's full speed, m/s; `null` where that is unknown.
 */
full_edge_speed_m_s: number | null,
/**
 * Force of the blow at that speed, N, drive included where it is known.
 */
impact_n: number | null, };

/**
 * A coefficient of friction with its uncertainty.
 */
export type FrictionRange = {
/**
 * Lower end.
 */
low: number,
/**
 * What to reckon with.
 */
likely: number,
/**
 * Upper end.
 */
high: number, };

/**
 * A least distance.
 */
export type Gap = {
/**
 * Which part.
 */
part: Part,
/**
 * What it could meet.
 */
against: Against,
/**
 * Its place in `obstacles`, from 0; 0 for the leaf.
 */
index: number,
/**
 * Least distance over the swing, m; negative where they overlap.
 */
least_m: number,
/**
 * Leaf angle there, degrees.
 */
leaf_deg: number, };

/**
 * Gaps at one leaf angle.
 */
export type GapPoint = {
/**
 * Leaf angle, degrees.
 */
leaf_deg: number,
/**
 * Gap at the hinge axis, m.
 */
gap_hinge_m: number,
/**
 * Gap at the latch edge, m.
 */
gap_latch_m: number,
/**
 * Height of the bracket pin over where it is when closed, m.
 */
bracket_rise_m: number, };

/**
 * The ground under the swing, and what the arm's joints allow.
 */
export type Ground = {
/**
 * Slope of the ground, degrees; default 0.
 */
slope_deg: number | null,
/**
 * Plan direction of uphill in the frame of the closed leaf, degrees; default 0.
 */
uphill_deg: number | null,
/**
 * Gap under the leaf at the hinge axis, leaf closed, m.
 */
gap_m: number,
/**
 * How much higher the leaf's bottom is hung at the latch edge than square to the hinge axis, m; default 0.
 */
bottom_rise_m: number | null,
/**
 * Rise and fall of the bracket pin that the arm's joints allow, in all, m.
 */
joint_allowance_m: number | null, };

/**
 * A wind as it is reckoned with.
 */
export type Gust = {
/**
 * Gust at the gate whose plain pressure `½ρV²` equals `pressure_pa`, m/s.
 */
speed_m_s: number,
/**
 * Pressure at the wanted load level, gust effect and shelter included, Pa.
 */
pressure_pa: number,
/**
 * Force coefficient on the leaf's solid area at its centre, so that the moment about the hinge is right.
 */
force_coefficient: number,
/**
 * Force coefficient on the same area, so that the force is right: less where a standard's shape puts the resultant towards the latch edge.
 */
resultant_coefficient: number,
/**
 * Air density, kg/m³.
 */
air_density_kg_m3: number, };

/**
 * Where the hinge is for a person on the side the leaf opens towards, facing the gate.
 */
export type Hand = "right" | "left";

/**
 * Largest steady push at the latch edge that moves the leaf with the arm disconnected.
 */
export type HandForce = {
/**
 * In calm air, N.
 */
calm_n: number,
/**
 * Leaf angle there, degrees.
 */
leaf_deg: number,
/**
 * Against the working wind, N.
 */
against_wind_n: number,
/**
 * What it is compared with, N.
 */
limit_n: number,
/**
 * Where that comes from.
 */
source: Source, };

/**
 * What holds the leaf at one angle while the storm pushes square to it; magnitudes, since it may come from either side.
 */
export type HeldLeaf = {
/**
 * Leaf angle, degrees from closed.
 */
leaf_deg: number,
/**
 * Moment about the hinge, N·m: the storm's and, as it may come from the side the leaf leans to, that of a lean or a ramp there. The hinges'
 * friction is not counted on.
 */
moment_n_m: number,
/**
 * Torque that holds the shaft, `η·T_leaf/n` with the losses that help to hold, N·m; 0 at a dead point.
 */
shaft_torque_n_m: number,
/**
 * Force in the link, N.
 */
link_force_n: number,
/**
 * Part of it along the leaf, N.
 */
bracket_along_n: number,
/**
 * Part of it square to the leaf, N.
 */
bracket_across_n: number,
/**
 * Horizontal force on the hinges together, N.
 */
hinge_n: number,
/**
 * Force on a bolt or catch at the latch edge that holds the leaf instead of the arm, N: `T_leaf/L`. One that stands nearer to the hinge takes
 * more, by the ratio of the distances.
 */
bolt_n: number, };

/**
 * The highest slip torque that spares every part, and which part decides it.
 */
export type HighestSlip = {
/**
 * Slip torque, N·m.
 */
slip_torque_n_m: number,
/**
 * The part that is reached first.
 */
part: SparedPart,
/**
 * Leaf angle at which it is, degrees; `null` for the gearbox, which knows no angle.
 */
leaf_deg: number | null, };

/**
 * The gap at the hinge through the swing.
 */
export type HingeGap = {
/**
 * Leaf closed, m.
 */
closed_m: number,
/**
 * Leaf open, m.
 */
open_m: number,
/**
 * Widest over the swing, m.
 */
widest_m: number,
/**
 * Leaf angle there, degrees.
 */
widest_leaf_deg: number,
/**
 * Least over the swing, m.
 */
least_m: number,
/**
 * Leaf angle there, degrees.
 */
least_leaf_deg: number, };

/**
 * What resists at the hinges: built up from pins and collar, or measured.
 */
export type Hinges = { "kind": "plain" } & PlainHinges | { "kind": "measured" } & MeasuredHinges | { "kind": "rolling" } & RollingHinges | { "kind": "rising" } & RisingHinges;

/**
 * The closed leaf in the storm, held by the arm and a drive at a stand. Not a lock.
 */
export type Holding = {
/**
 * Whether it holds.
 */
verdict: HoldingVerdict,
/**
 * Whether the leaf needs a lock or a drop bolt; also where what holds it is not known.
 */
lock_needed: boolean,
/**
 * Leaf angle by which play may leave it off closed, degrees.
 */
play_leaf_deg: number,
/**
 * Torque that holds the shaft with the leaf exactly closed, N·m; 0 at a dead point.
 */
closed_torque_n_m: number,
/**
 * Largest torque that holds the shaft within the play, N·m: what drive and clutch have to hold.
 */
torque_n_m: number,
/**
 * The lesser of what the drive at a stand holds and what slips the clutch, N·m; `null` where neither is known.
 */
limit_n_m: number | null,
/**
 * Which of the two that is; `null` where neither is known.
 */
limit_by: HoldingLimit | null,
/**
 * Largest force in link and bracket within the play, N.
 */
link_force_n: number, };

/**
 * What holds the closed leaf in the storm while the drive is off. Needs `storm`.
 */
export type HoldingFacts = {
/**
 * Torque at which the drive at a stand begins to give way, N·m; unknown unless given.
 */
shaft_torque_n_m: number | null,
/**
 * Most force the link stands, N; no limit unless given.
 */
link_force_n: number | null,
/**
 * Most force the bracket stands, N; no limit unless given.
 */
bracket_force_n: number | null,
/**
 * Leaf angle by which play and a limit set short may leave the leaf off closed, degrees; default 0.5 (common practice, no source).
 */
play_deg: number | null, };

/**
 * What lets go first at the shaft.
 */
export type HoldingLimit = "drive" | "clutch";

/**
 * Whether the arm alone holds the closed leaf. Whatever the answer, a lock it is not.
 */
export type HoldingVerdict = "gives_way" | "unknown" | "holds";

/**
 * Ice or wet snow on the leaf.
 */
export type Ice = {
/**
 * Thickness, m: all round the leaf's members where the job lists them, or else on each face of the wind area.
 */
thickness_m: number,
/**
 * Density, kg/m³; default 900 (glaze; from memory of ISO 12494).
 */
density_kg_m3: number | null,
/**
 * Wind area with ice over without; default 1. Listed members are wider by their ice in any case: this only raises what they come to.
 */
area_factor: number | null, };

/**
 * Ice on the leaf.
 */
export type IceLoad = {
/**
 * Its mass, kg.
 */
mass_kg: number,
/**
 * Wind area with it, m².
 */
wind_area_m2: number,
/**
 * Whether it lies all round the leaf's members; on both faces of the wind area where they are not known.
 */
all_round: boolean, };

/**
 * A job that cannot be planned, with every fault that could be found at once.
 */
export type Invalid = {
/**
 * Never empty.
 */
errors: Array<Fault>, };

/**
 * Everything `plan` needs to know. Serialises to the job document.
 */
export type Job = {
/**
 * Version of the document.
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
 * What a set-out may choose from; needed for a search.
 */
setout: SetOut | null,
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
samples: number | null,
/**
 * The wind the closed leaf, its arm and its anchors must hold; kept apart from the working wind.
 */
storm: Wind | null,
/**
 * Drag besides the hinges; default none.
 */
drag: Drag | null,
/**
 * Ice or wet snow on the leaf; default none.
 */
ice: Ice | null,
/**
 * The ground under the swing.
 */
ground: Ground | null,
/**
 * What stands around; given (even empty), the plan has the clearances.
 */
obstacles: Array<Obstacle> | null,
/**
 * Half the width of crank and link in plan, m; default 0.
 */
arm_half_width_m: number | null,
/**
 * What is marked out with; given, the plan has the marks.
 */
marks: Marks | null,
/**
 * How far a tape errs; given, the plan says what that costs.
 */
tape: Tape | null,
/**
 * What was built; given, the plan says what became of it.
 */
as_built: AsBuilt | null,
/**
 * How the leaf is to move through time. Needs the operator's shaft speed.
 */
motion: MotionFacts | null,
/**
 * What lets go before something is overloaded.
 */
breakaway: BreakawayFacts | null,
/**
 * What holds the closed leaf in the storm.
 */
holding: HoldingFacts | null,
/**
 * What a force on a person is estimated with.
 */
contact: Contact | null,
/**
 * The place the gate stands at, and the means of protection.
 */
site: Site | null,
/**
 * What is set at the first power-up.
 */
settings: Settings | null,
/**
 * What was measured and signed at the gate; given, the plan compares it.
 */
record: Record | null,
/**
 * What a document of an older schema said twice; written by the reader.
 */
migrated: Migrated | null,
/**
 * Uncertainty of inputs as a fraction of their value, by path; given (even empty) the plan shows what each input does to the
 * reserve, ±10 % where nothing is stated.
 */
uncertainty: { [key in string]: number } | null, };

/**
 * What came of looking at a subject.
 */
export type Judged = "within" | "tight" | "over" | "not_judged";

/**
 * One subject.
 */
export type Judgement = {
/**
 * What was looked at.
 */
about: Subject,
/**
 * What came of it.
 */
state: Judged,
/**
 * Why it is not judged; `null` where it is.
 */
unjudged: Unjudged | null,
/**
 * The most severe finding about it, one that passes no threshold included; `null` without any.
 */
finding: FindingCode | null,
/**
 * Path of the field that would change it; `null` where there is none.
 */
path: string | null, };

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
 * Axis title of the part of the rated torque that is asked for, with its unit.
 */
used: string,
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
 * On the line along the closed leaf through the hinge axis.
 */
axis_line: string,
/**
 * On the line square to it.
 */
hinge_line: string,
/**
 * On the line of the leaf's face.
 */
face_line: string,
/**
 * At the operator's shaft.
 */
shaft: string,
/**
 * At the end of the axis line that points to the latch.
 */
to_latch: string,
/**
 * Before the crank's length.
 */
crank: string,
/**
 * Before the link's length.
 */
link: string,
/**
 * The language's decimal mark.
 */
decimal: string,
/**
 * Axis title, without unit.
 */
time: string,
/**
 * Axis title, without unit.
 */
edge_speed: string,
/**
 * On the line of the motor opening.
 */
motor_opening: string,
/**
 * On the line of the motor closing.
 */
motor_closing: string,
/**
 * Where a motor comes to a stand.
 */
stalls: string,
/**
 * Where a motor comes to a stand and is pushed back.
 */
driven_back: string,
/**
 * Where a motor hardly moves the leaf any more.
 */
creeps: string,
/**
 * On the line of what is held back while opening.
 */
overrun_opening: string,
/**
 * On the line of what is held back while closing.
 */
overrun_closing: string,
/**
 * On the line of what holds the leaf at a stand.
 */
holding: string, };

/**
 * The leaf's weight, size and what the wind sees of it.
 */
export type Leaf = {
/**
 * Mass, kg; unless its members say.
 */
mass_kg: number | null,
/**
 * Hinge axis to latch edge, m.
 */
length_m: number,
/**
 * Height, m. Needed where a standard's shape gives the force coefficient; also for drawing and hand-over. A plain force coefficient does
 * without it.
 */
height_m: number | null,
/**
 * Leaf's face on its opening side from the axis line, m, positive towards that side; marks on the ground may be shown from it; default 0.
 */
face_m: number | null,
/**
 * How thick it is, from that face away from the opening side, m; default 0.06.
 */
thickness_m: number | null,
/**
 * How far it reaches past the hinge axis, away from its latch edge, m; default 0.
 */
heel_m: number | null,
/**
 * Area that stops the wind, square to the leaf, m²; unless its members say.
 */
wind_area_m2: number | null,
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
inertia_kg_m2: number | null,
/**
 * What it is made of: mass, mass centre, inertia and wind area follow, unless they are given here as well.
 */
members: Array<Member> | null, };

/**
 * Most weight of a leaf up to a length.
 */
export type LeafLimit = {
/**
 * Leaves up to this length, m.
 */
length_m: number,
/**
 * Most such a leaf may weigh, kg.
 */
mass_kg: number, };

/**
 * Lean of the hinge axis out of plumb.
 */
export type Lean = {
/**
 * Lean out of plumb, degrees; default 0, or what the plumb line says.
 */
angle_deg: number | null,
/**
 * Plan direction of downhill in the frame of the closed leaf, degrees; default 0. At rest the leaf hangs there.
 */
downhill_deg: number | null,
/**
 * Offset of a plumb line from the hinge axis, m, over the height below; instead of an angle.
 */
plumb_offset_m: number | null,
/**
 * Height over which the offset was measured, m.
 */
plumb_height_m: number | null, };

/**
 * A part that was begun, could not be read, and is not counted.
 */
export type LeftOut = {
/**
 * Its path in the document: a block, or one item of a list.
 */
path: string,
/**
 * What it needs, with the paths of the document as it is.
 */
faults: Array<Fault>, };

/**
 * A limit of the set-out, by the name of its field.
 */
export type Limit = "shaft_x_m" | "shaft_y_m" | "bracket_u_m" | "crank_m" | "link_m" | "straightness" | "square_deg" | "least_lever_m" | "shaft_travel_deg" | "most_shaft_torque_n_m" | "keep_out" | "step_m" | "arm" | "tape_arm" | "tape_least_lever_m" | "tape_shaft_travel_deg" | "tape_keep_out";

/**
 * An entry that can be used.
 */
export type ListEntry = {
/**
 * Its place in the list, from 0.
 */
index: number,
/**
 * What is known of it.
 */
operator: ListedOperator,
/**
 * What stands about its shaft: body and base plate together; `null` where neither is known.
 */
outline: OperatorBody | null,
/**
 * The entry as the host wrote it, with what is not known here.
 */
written: { [key: string]: unknown }, };

/**
 * An operator as its maker states it. What is not said is not known, and limits nothing.
 */
export type ListedOperator = {
/**
 * What the list calls it, once in the list.
 */
id: string,
/**
 * What people call it, where no name of their language is given.
 */
name: string,
/**
 * What it is called by language.
 */
names: OperatorNames | null,
/**
 * Torque its output shaft gives continuously, N·m.
 */
rated_torque_n_m: number,
/**
 * Torque it gives for moments, N·m; not below the rated one.
 */
peak_torque_n_m: number | null,
/**
 * Speed of the shaft, degrees a second.
 */
shaft_speed_deg_s: number | null,
/**
 * Most the shaft turns from closed to open, degrees.
 */
shaft_travel_deg: number | null,
/**
 * Part of the shaft's work that its arm brings to the leaf; default 1.
 */
arm_efficiency: number | null,
/**
 * Whether the leaf turns the shaft while the drive is off.
 */
back_drives: boolean | null,
/**
 * Torque at which the drive at a stand begins to give way, N·m.
 */
holding_torque_n_m: number | null,
/**
 * The arm it is bought with.
 */
kit: ArmKit | null,
/**
 * Its outline about the shaft.
 */
body: OperatorBody | null,
/**
 * The plate it stands on.
 */
base: BasePattern | null,
/**
 * Most weight by length of leaf.
 */
leaf_limits: Array<LeafLimit> | null,
/**
 * Cycles it is rated for, by temperature.
 */
duty: Array<DutyRating> | null,
/**
 * Coldest and hottest air it is made for, °C.
 */
temperature_c: [number, number] | null,
/**
 * What it is fed with, and what it takes.
 */
supply: Supply | null,
/**
 * What keeps it going without supply.
 */
battery: Battery | null,
/**
 * Slip torque its breakaway can be set to, least and most, N·m at the shaft.
 */
slip_torque_n_m: [number, number] | null, };

/**
 * Load level a pressure is wanted at. Never mixed silently: the job names it.
 */
export type LoadLevel = "strength" | "allowable";

/**
 * Loads on the leaf about the hinge.
 */
export type Loads = {
/**
 * Friction of all hinges and steady drag, N·m; on a ramp when opening.
 */
hinge_friction_n_m: number,
/**
 * The job's gust, square to the leaf, N·m.
 */
wind_n_m: number,
/**
 * Moment of inertia about the hinge axis, kg·m².
 */
inertia_kg_m2: number,
/**
 * The relation by which the hinges' friction was computed, in symbols; absent where it was measured.
 */
friction_relation: string | null,
/**
 * Snow in the way of the leaf; nothing is calculated with it.
 */
snow: SnowInTheWay,
/**
 * What a ramp does, where the hinges rise.
 */
ramp: Ramp | null, };

/**
 * A place on the ground.
 */
export type Mark = {
/**
 * Along the closed leaf from the hinge line, m, positive towards the latch edge.
 */
from_hinge_line_m: number,
/**
 * Square to the closed leaf from the axis line, m, positive on the side the leaf opens to.
 */
from_axis_line_m: number,
/**
 * The same from the leaf's face on its opening side, m.
 */
from_face_m: number,
/**
 * From the hinge axis, m: both diagonals of the rectangle of the two offsets have this length where it is square, as 3-4-5 has it.
 */
diagonal_m: number,
/**
 * From the latch end of the axis line, m, which is as far from the hinge axis as the leaf's latch edge: with the diagonal it fixes the place
 * without a square.
 */
from_latch_m: number, };

/**
 * A mark as it is told: how far from its line, and on which side. A tape has no minus.
 */
export type MarkApart = {
/**
 * The distance, without a sign.
 */
text: string,
/**
 * Where it lies.
 */
side: MarkSide, };

/**
 * Everything to mark, cut and set.
 */
export type MarkOut = {
/**
 * The shaft.
 */
shaft: Mark,
/**
 * Elbow with the leaf closed.
 */
elbow_closed: Mark,
/**
 * Elbow with the leaf open.
 */
elbow_open: Mark,
/**
 * Leaf's face on its opening side from the axis line, m: what is measured from the face is less by it.
 */
face_m: number,
/**
 * Direction of the base: that of the closed arm's crank, turned as the job says; degrees from the closed leaf, counter-clockwise,
 * above −180 to 180.
 *
 * The closed crank is what the base is laid by because the arm stands there while the anchors are marked, the leaf on its stop.
 */
base_direction_deg: number,
/**
 * Anchor holes, counter-clockwise from the one at the far end along the base and clockwise of it; empty where their spacing is not said.
 */
anchors: Array<Mark>,
/**
 * Diagonal of the rectangle of holes, m.
 */
anchor_diagonal_m: number | null,
/**
 * Bracket pin along the leaf from the hinge line of the closed leaf, m.
 */
bracket_along_m: number,
/**
 * Bracket pin square to the leaf, from the axis line of the closed leaf, m.
 */
bracket_across_m: number,
/**
 * The same from the leaf's face, m.
 */
bracket_proud_m: number,
/**
 * Height of the base over the pad that puts the arm level with the cross member, m; negative where the pad is too high.
 */
riser_m: number | null,
/**
 * The crank's tubes.
 */
crank: Tubes,
/**
 * The link's tubes.
 */
link: Tubes,
/**
 * Shaft limits, closed then open.
 */
limits: [ShaftLimit, ShaftLimit],
/**
 * What of the job was not said and is assumed here.
 */
assumed: Array<string>, };

/**
 * The side of its line a mark lies on.
 */
export type MarkSide = "minus" | "on" | "plus";

/**
 * What is bought and what is level on site, for marking out. Lengths of tubes: crank and link are two tubes each, one in the other.
 */
export type Marks = {
/**
 * Spacing of the anchor holes along the crank of the closed arm, m.
 */
anchor_along_m: number | null,
/**
 * Spacing of the anchor holes across it, m.
 */
anchor_across_m: number | null,
/**
 * Middle of the holes from the shaft, along the crank of the closed arm towards the elbow, m; default 0.
 */
anchor_offset_along_m: number | null,
/**
 * Middle of the holes from the shaft, a quarter turn counter-clockwise from that, m; default 0.
 */
anchor_offset_across_m: number | null,
/**
 * How far the base is turned from the crank of the closed arm, degrees counter-clockwise; default 0.
 */
anchor_turn_deg: number | null,
/**
 * Level of the pad's top over a datum, m.
 */
pad_level_m: number | null,
/**
 * Level of the leaf's cross member at the bracket over the same datum, m.
 */
crossbar_level_m: number | null,
/**
 * The arm's plane over the operator's base, m; default 0.
 */
arm_height_m: number | null,
/**
 * How far the two tubes of a part are in one another, m; default 0.
 */
overlap_m: number | null,
/**
 * What joints at both ends of the crank take off its tubes, together, m; default 0.
 */
crank_ends_m: number | null,
/**
 * What joints at both ends of the link take off its tubes, together, m; default 0.
 */
link_ends_m: number | null, };

/**
 * One means of protection, ticked off.
 */
export type Means = {
/**
 * How it works.
 */
kind: MeansKind,
/**
 * The movement it protects in; both unless said.
 */
direction: Direction | null,
/**
 * Whether its fault stops the drive; unknown, and then not counted, unless said.
 */
monitored: boolean | null,
/**
 * Zones it reaches; none unless said.
 */
reaches: Array<ZoneKind> | null,
/**
 * What it senses, in plan: where it reaches and leaves a gap is not looked at without.
 */
area: SensedArea | null, };

/**
 * Means wanted and counted in one movement.
 */
export type MeansCount = {
/**
 * The movement.
 */
direction: Direction,
/**
 * Independent means wanted, no two of one kind.
 */
wanted: number,
/**
 * Kinds fitted that count.
 */
counted: number,
/**
 * Means fitted that do not count: external and not monitored, or of a kind that is there already.
 */
not_counted: number,
/**
 * Where the number wanted comes from.
 */
source: Source, };

/**
 * How a means of protection works. Types A, B1, B2, C and D of UL 325 (from memory).
 */
export type MeansKind = "inherent" | "non_contact" | "contact" | "inherent_force" | "constant_pressure";

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
 * One line of the list: a section, and where how many pieces of it sit.
 */
export type Member = { "section": "tube" } & Tube | { "section": "round_tube" } & RoundTube | { "section": "bar" } & Bar | { "section": "round_bar" } & RoundBar | { "section": "sheet" } & Sheet | { "section": "boards" } & Boards | { "section": "mesh" } & Mesh;

/**
 * Where the pieces of one line sit on the leaf.
 */
export type MemberPlace = {
/**
 * Hinge axis to the near end, or to the centre-line of the first upright, m.
 */
from_m: number,
/**
 * Hinge axis to the far end, or to the centre-line of the last upright, m.
 */
to_m: number,
/**
 * Height, m. Given: uprights, spread evenly, or a panel. Absent: rails from end to end.
 */
height_m: number | null,
/**
 * How much higher a sloping rail ends than it starts, m; default 0.
 */
rise_m: number | null,
/**
 * Pieces; default 1.
 */
count: number | null, };

/**
 * What the listed members come to. Crossings count twice: a rail welded over uprights shades them, which is left out on the careful side.
 */
export type MemberTotals = {
/**
 * Mass, kg.
 */
mass_kg: number,
/**
 * Hinge axis to mass centre, m.
 */
mass_centroid_m: number,
/**
 * Moment of inertia about the hinge axis, kg·m²; the members' own thickness is neglected.
 */
inertia_kg_m2: number,
/**
 * Area that stops the wind, m².
 */
wind_area_m2: number,
/**
 * Hinge axis to that area's centre, m.
 */
wind_centroid_m: number, };

/**
 * Square mesh of round wire over a part of the leaf.
 */
export type Mesh = {
/**
 * Density, kg/m³; default 7850 (steel).
 */
density_kg_m3: number | null,
/**
 * Where it sits; needs a height.
 */
place: MemberPlace,
/**
 * Diameter of the wire, m.
 */
wire_m: number,
/**
 * Distance of the wires, centre to centre, m.
 */
pitch_m: number, };

/**
 * Widths that a document of schema 1 gave in two places and not alike; the larger is kept, the other stands here until somebody looks.
 */
export type Migrated = {
/**
 * Half the width of crank and link that was not kept, m.
 */
arm_half_width_other_m: number | null,
/**
 * Thickness of the leaf that was not kept, m.
 */
leaf_thickness_other_m: number | null, };

/**
 * The leaf through time.
 */
export type Motion = {
/**
 * Opening against the wind.
 */
opening: PrescribedRun,
/**
 * Closing against the wind.
 */
closing: PrescribedRun,
/**
 * Largest shaft torque with the wind behind, both ways: holding back and braking together.
 */
held_back: TimedTorque,
/**
 * Largest shaft torque of both, start and inertia included, over the rated torque.
 */
utilisation: number,
/**
 * The same over the peak torque; `null` where that is unknown.
 */
peak_utilisation: number | null,
/**
 * Where the operator's limits are set.
 */
limits: ShaftLimits,
/**
 * Inertia of motor and gear at the operator's shaft that stops and coasting are reckoned with, kg·m²; `null` where the job describes no
 * motor: they are then those of the leaf alone, and the gate's are more.
 */
drive_inertia_kg_m2: number | null,
/**
 * What the stop behind the open limit takes.
 */
open_stop: EndStop,
/**
 * What the stop behind the closed limit takes.
 */
closed_stop: EndStop,
/**
 * How far the leaf runs on after the drive lets go half open, opening.
 */
coast_open: Coast,
/**
 * The same closing.
 */
coast_close: Coast,
/**
 * Moving the leaf by hand, arm disconnected.
 */
hand: HandForce,
/**
 * The motor's runs, where the job describes it.
 */
driven: Driven | null,
/**
 * Cycles against the rating, where the job says how many.
 */
duty: DutyUse | null, };

/**
 * The shaft's speed through time, its motor, its stops.
 */
export type MotionFacts = {
/**
 * Time from rest to the operator's shaft speed, s; default 1 (common practice, no source).
 */
ramp_up_s: number | null,
/**
 * Time from that speed to rest, s; default 1 (common practice, no source).
 */
ramp_down_s: number | null,
/**
 * Shaft angle before the open limit at which the slow zone starts, degrees; default 0, none.
 */
slow_open_deg: number | null,
/**
 * Shaft angle before the closed limit at which the slow zone starts, degrees; default 0, none.
 */
slow_close_deg: number | null,
/**
 * Shaft speed in the slow zones, degrees a second; default a third of the operator's.
 */
slow_speed_deg_s: number | null,
/**
 * Drag of the released drive at the operator's shaft, N·m; default 0, running free.
 */
coast_drag_n_m: number | null,
/**
 * Stiffness of an end stop with the leaf where it meets it, N/m; no stop force without it.
 */
stop_stiffness_n_per_m: number | null,
/**
 * Resistance of battery and run to the motor together, Ω; default 0: the voltage does not sag under load.
 */
supply_resistance_ohm: number | null,
/**
 * The motor; no driven run without it.
 */
motor: MotorFacts | null,
/**
 * How often it is to run; nothing said of duty without it.
 */
duty: Duty | null, };

/**
 * The leaf at one time.
 */
export type MotionPoint = {
/**
 * Time from the start, s.
 */
time_s: number,
/**
 * Shaft angle from closed, degrees, signed.
 */
shaft_deg: number,
/**
 * Leaf angle from closed, degrees.
 */
leaf_deg: number,
/**
 * Shaft speed, degrees a second, signed like the shaft angle.
 */
shaft_speed_deg_s: number,
/**
 * Leaf speed, degrees a second, positive opening.
 */
leaf_speed_deg_s: number,
/**
 * Leaf acceleration, degrees a second squared, positive opening.
 */
leaf_acceleration_deg_s2: number,
/**
 * Speed of the latch edge, m/s, magnitude.
 */
edge_speed_m_s: number,
/**
 * Kinetic energy of the leaf, J.
 */
energy_j: number,
/**
 * Moment the drive brings to the leaf, N·m, positive opening.
 */
leaf_torque_n_m: number,
/**
 * Torque at the shaft, N·m, signed like the shaft angle.
 */
shaft_torque_n_m: number,
/**
 * The part of it that accelerates the leaf, N·m, without the arm's losses.
 */
inertial_torque_n_m: number,
/**
 * Power at the shaft, W; negative where the leaf drives it.
 */
shaft_power_w: number, };

/**
 * A motor behind its gear, at the supply it has.
 */
export type Motor = {
/**
 * Torque at standstill, at the operator's shaft, N·m.
 */
stall_torque_n_m: number,
/**
 * Speed without load, at the operator's shaft, rad/s.
 */
no_load_rad_s: number,
/**
 * Inertia of motor and gear, at the operator's shaft, kg·m².
 */
inertia_kg_m2: number,
/**
 * Its torque by speed where that is no straight line; `null` where it is.
 */
table: MotorTable | null, };

/**
 * A motor and its gear: the straight line of a permanent-magnet direct-current motor, or a table of speed and torque.
 */
export type MotorFacts = {
/**
 * Torque at standstill at the rated voltage, at the motor, N·m; unless `curve` says it.
 */
stall_torque_n_m: number | null,
/**
 * Speed without load at the rated voltage, at the motor, degrees a second; unless `curve` says it.
 */
no_load_speed_deg_s: number | null,
/**
 * Torque by speed at the rated voltage, at the motor, where it is no straight line: a three-phase or capacitor motor. From standstill to the
 * speed without load, where the torque is 0.
 */
curve: Array<MotorPoint> | null,
/**
 * Voltage the above are given for, V.
 */
rated_v: number,
/**
 * Voltage there is at the motor under load, V; where `supply_resistance_ohm` is said, that of the source without load; default the rated one.
 */
supply_v: number | null,
/**
 * Turns of the motor for one turn of the operator's shaft; default 1: the numbers above are those of the shaft.
 */
gear_ratio: number | null,
/**
 * Part of the motor's work that reaches the operator's shaft; default 1.
 */
gear_efficiency: number | null,
/**
 * Time in which motor and gear alone reach 63 % of the no-load speed, s; default 0.05 (common practice, no source).
 */
run_up_s: number | null, };

/**
 * One point of a motor's table.
 */
export type MotorPoint = {
/**
 * Speed of the motor, degrees a second: 0 in the first point, rising from point to point.
 */
speed_deg_s: number,
/**
 * Its torque there, N·m: more than 0, and 0 in the last point.
 */
torque_n_m: number, };

/**
 * Torque by rising speed, straight lines between the points, from standstill to the speed without load, where the last torque is 0.
 *
 * Beyond the last point there is no torque. An induction motor that is driven over its synchronous speed does brake, as a generator on the
 * mains; that is not counted on, so a leaf that wind or lean drive comes out faster than it may be: the careful side for speeds and blows. A steady
 * curve stands for the motor at every moment: currents that settle within a turn or two of the mains are left out.
 */
export type MotorTable = Array<ShaftTorque>;

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
 * The nearest set-out that is none, and what is in the way.
 */
export type Nearest = {
/**
 * The limit it exceeds most.
 */
limit: Limit,
/**
 * By how much, in the unit of that limit's field.
 */
by: number,
/**
 * Every limit it exceeds.
 */
exceeded: Array<Change>,
/**
 * For each limit that would do alone: the least change of it with which a set-out exists, the least change first.
 */
changes: Array<Change>,
/**
 * Shaft along the closed leaf from the hinge line, m.
 */
shaft_x_m: number,
/**
 * Shaft square to the closed leaf from the axis line, towards the side the leaf opens to, m.
 */
shaft_y_m: number,
/**
 * Bracket pin along the leaf from the hinge line of the closed leaf, m.
 */
bracket_u_m: number,
/**
 * Bracket pin square to the leaf from the axis line of the closed leaf, on its opening side, m.
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
 * The operator that nearly does.
 */
export type NextSmaller = {
/**
 * Its place in the host's list, from 0.
 */
index: number,
/**
 * What would make it do, each by itself; empty where nothing that is tried does.
 */
suggestions: Array<Suggestion>, };

/**
 * Something that stands around: a rectangle in plan, its sides along the closed leaf and across it.
 */
export type Obstacle = {
/**
 * What it is; default something else.
 */
kind: ObstacleKind | null,
/**
 * Whether the leaf is hung on it, so that a gap closes beside it; no unless said.
 */
hinge_post: boolean | null,
/**
 * Along the closed leaf from the hinge line, m.
 */
x_m: [number, number],
/**
 * Square to the closed leaf from the axis line, towards the side it opens to, m.
 */
y_m: [number, number],
/**
 * How high it is, m; for the person who reads it: whether it stops arm or leaf is said by `stops`.
 */
height_m: number | null,
/**
 * What cannot pass or stand there; all three where it is not said.
 */
stops: Array<Stopped> | null, };

/**
 * What an obstacle is.
 */
export type ObstacleKind = "post" | "wall" | "kerb" | "other";

/**
 * What is left behind the open leaf.
 */
export type OpenGap = {
/**
 * Its place in `obstacles`, from 0.
 */
obstacle: number,
/**
 * Distance of the open leaf from it, m.
 */
gap_m: number,
/**
 * How far from the hinge axis along the open leaf the obstacle reaches, m.
 */
reach_m: number, };

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
arm_efficiency: number | null,
/**
 * Part of the leaf's work that reaches the shaft while the leaf drives it: in a wind from behind, down a lean, at a stand; default
 * `arm_efficiency`.
 */
back_efficiency: number | null,
/**
 * Whether the leaf can turn the shaft while the drive is off; default yes. A gear that does not back-drive (a worm whose lead angle is below
 * its angle of friction) still carries at its shaft what the leaf asks of it.
 */
back_drives: boolean | null,
/**
 * Its outline, where it is known: without, nothing but the shaft stands there.
 */
body: OperatorBody | null, };

/**
 * The operator's body and base seen from above: a rectangle about the shaft, along and across the direction its base is laid in.
 *
 * The base is laid along the crank of the closed arm, turned as the marks say.
 */
export type OperatorBody = {
/**
 * From the shaft along the base, towards the elbow of the closed arm, m.
 */
along_m: [number, number],
/**
 * From the shaft across it, a quarter turn counter-clockwise from that, m.
 */
across_m: [number, number],
/**
 * How high it is, m; for the person who reads it.
 */
height_m: number | null, };

/**
 * A list of operators to choose from, as a host gives it. What is not known here is kept.
 */
export type OperatorList = {
/**
 * What the list is, for whoever chooses from it.
 */
title: string | null,
/**
 * The operators.
 */
operators: Array<ListedOperator>, };

/**
 * Names by language; those of other languages are carried.
 */
export type OperatorNames = {
/**
 * English.
 */
en: string | null,
/**
 * Spanish.
 */
es: string | null, };

/**
 * Operators in the order of how well they do.
 */
export type OperatorRanking = {
/**
 * Those that do before those that do not; within each the larger reserve first, then the larger rated torque, then by id.
 */
operators: Array<RankedOperator>,
/**
 * Of those that do not, the largest that is smaller than the smallest that does, or the largest of all where none does; `null` where all do.
 */
next_smaller: NextSmaller | null, };

/**
 * The one reason why an operator will not do.
 */
export type OperatorRefusal = {
/**
 * The reason.
 */
code: RefusalCode,
/**
 * The limit of the set-out that is in the way, where it has no place.
 */
limit: Limit | null,
/**
 * Numbers for the sentence.
 */
values: Array<NamedValue>, };

/**
 * The leaf over the ground.
 */
export type OverGround = {
/**
 * Least gap anywhere along the leaf and the swing, m; negative where the leaf is in the ground.
 */
least_gap_m: number,
/**
 * Leaf angle there, degrees.
 */
least_gap_leaf_deg: number,
/**
 * Widest gap anywhere along the leaf and the swing, m.
 */
widest_gap_m: number,
/**
 * First leaf angle from closed at which the leaf touches, degrees; `null` where it clears the ground.
 */
touch_leaf_deg: number | null,
/**
 * Rise and fall of the bracket pin through the swing, in all, m.
 */
bracket_rise_m: number,
/**
 * Rows at the curve's leaf angles.
 */
curve: Array<GapPoint>, };

/**
 * The worst of what was judged.
 */
export type Overall = {
/**
 * Over while any finding is a stop, whatever it is about; tight while any subject is; not judged rather than within while a part that was
 * begun is left out. Within is never to be shown without naming what was judged.
 */
state: Judged,
/**
 * What that is about: the first stop's subject, the first that is tight, the first that waits for what was begun.
 */
about: Subject,
/**
 * Every subject that was judged, in the order in which they are told: what is within, where the state is.
 */
judged: Array<Subject>,
/**
 * How many findings are stops.
 */
stops: number,
/**
 * The finding that it rests on; `null` without one.
 */
finding: FindingCode | null, };

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
 * What the map says of a place.
 */
export type Pad = {
/**
 * The best arm found with the shaft here, or the one that comes nearest.
 */
arm: Arm,
/**
 * Its peak shaft torque, N·m, within the map's stated error; `null` where no arm keeps the limits.
 */
shaft_torque_n_m: number | null,
/**
 * Rated torque over it.
 */
reserve: number | null,
/**
 * The limit that rules the place out, and by how much; `null` where none does.
 */
ruled_out: Change | null, };

/**
 * What slides or rolls on what in the hinge.
 */
export type Pairing = "steel_steel_dry" | "steel_steel_greased" | "steel_bronze_dry" | "steel_bronze_greased" | "ptfe_lined" | "rolling";

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
leaf: Colour,
/**
 * What is held back, and a hatching.
 */
third: Colour,
/**
 * What holds at a stand, and a hatching.
 */
fourth: Colour, };

/**
 * A part of the gate.
 */
export type Part = "crank" | "link" | "elbow" | "leaf" | "operator";

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
 * A place in plan.
 */
export type Place = {
/**
 * Along the closed leaf from the hinge axis, m.
 */
x_m: number,
/**
 * Square to the closed leaf from the hinge axis, towards the side it opens to, m.
 */
y_m: number, };

/**
 * Whether a place was looked for.
 */
export type PlaceSought = "not_asked" | "found" | "not_found";

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
 * Coefficient of friction; unless `pairing` says what slides on what.
 */
friction_coefficient: number | null,
/**
 * What slides on what: a handbook range.
 */
pairing: Pairing | null,
/**
 * Lower end of the coefficient.
 */
friction_low: number | null,
/**
 * Upper end of the coefficient.
 */
friction_high: number | null,
/**
 * How the collar carries; default uniform pressure, the careful case.
 */
collar: Collar | null, };

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
 * The worst of the judgements: what stands for the whole plan is this, not the rating alone.
 */
overall: Overall,
/**
 * What was judged and what came of it, every subject once.
 */
judgements: Array<Judgement>,
/**
 * Paths of the job's fields that were not said and are assumed.
 */
assumed: Array<string>,
/**
 * The working wind, where it comes from a standard or has a bearing.
 */
wind: WorkingWind | null,
/**
 * What the leaf's members come to, where the job lists them.
 */
members: MemberTotals | null,
/**
 * What ice adds to the leaf, where the job has any.
 */
ice: IceLoad | null,
/**
 * The demand over the range of the friction coefficient, where the job has a range.
 */
band: Band | null,
/**
 * What each input does to the reserve, largest effect first, where the job asks.
 */
sensitivity: Array<Sensitivity> | null,
/**
 * The closed leaf in the storm, where the job names one.
 */
storm: Storm | null,
/**
 * The leaf over the ground, where the job describes it.
 */
ground: OverGround | null,
/**
 * Leaf and arm in the room around them, where the job describes it or says what stands around.
 */
clearances: Clearances | null,
/**
 * What to mark, cut and set, where the job says what with.
 */
mark_out: MarkOut | null,
/**
 * What a tape error costs, where the job asks.
 */
tape: TapeCost | null,
/**
 * What became of the arm that was built, where the job says how it was.
 */
as_built: Rebuilt | null,
/**
 * The leaf through time, where the job describes its motion.
 */
motion: Motion | null,
/**
 * The window of slip torque, where the job describes the breakaway.
 */
breakaway: Breakaway | null,
/**
 * The closed leaf held by the arm in the storm, where the job asks.
 */
holding: Holding | null,
/**
 * Force on a person, where the job describes the contact.
 */
person: ForceOnPerson | null,
/**
 * Zones, class and means of protection, where the job describes the site.
 */
entrapment: Entrapment | null,
/**
 * What was measured at the gate against all this, where the job records anything.
 */
record: Commissioning | null, };

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

/**
 * One way, wind against.
 */
export type PrescribedRun = {
/**
 * From rest to rest, s.
 */
time_s: number,
/**
 * Greatest speed of the shaft, degrees a second: less than the operator's where the way is too short for its ramps.
 */
shaft_speed_deg_s: number,
/**
 * Greatest speed of the latch edge, m/s.
 */
edge_speed_m_s: number,
/**
 * Leaf angle there, degrees.
 */
edge_speed_leaf_deg: number,
/**
 * Speed of the latch edge where the last ramp begins, m/s.
 */
arrival_edge_speed_m_s: number,
/**
 * Greatest acceleration of the leaf, degrees a second squared, magnitude.
 */
leaf_acceleration_deg_s2: number,
/**
 * Greatest kinetic energy of the leaf, J.
 */
energy_j: number,
/**
 * Largest shaft torque, inertia and wind against together.
 */
peak: TimedTorque,
/**
 * Largest part of it that accelerates the leaf, without losses.
 */
inertial: TimedTorque,
/**
 * Largest power at the shaft, W.
 */
shaft_power_w: number,
/**
 * Rows at evenly spaced times.
 */
curve: Array<MotionPoint>, };

/**
 * Which torque the drive's push is reckoned with.
 */
export type PushTorque = "slip" | "peak" | "rated";

/**
 * A QR code to be drawn: dark on light, in a square of `side` × `side` units.
 */
export type QrPath = {
/**
 * Side of the whole square in modules, the quiet zone included.
 */
side: number,
/**
 * Path data of the dark modules, one unit a module.
 */
path: string, };

/**
 * What kind of quantity a number is; decides its units and how many digits are worth showing.
 */
export type Quantity = "mass" | "length" | "short_length" | "area" | "force" | "torque" | "speed" | "angle" | "angular_speed" | "density" | "inertia" | "pressure" | "ratio" | "percent" | "count" | "time" | "voltage" | "resistance" | "energy" | "power" | "stiffness" | "angular_acceleration" | "temperature" | "current" | "charge";

/**
 * The ramp of rising hinges: weight and friction depend on the way the leaf moves.
 */
export type Ramp = {
/**
 * Moment of the weight on the ramp, N·m; positive where it closes the leaf.
 */
weight_n_m: number,
/**
 * Friction of hinges and steady drag when opening, N·m: what the drive must give beyond the weight's moment.
 */
friction_open_n_m: number,
/**
 * The same when closing.
 */
friction_close_n_m: number, };

/**
 * How far a ranking is.
 */
export type RankProgress = {
/**
 * Operators held against the leaf.
 */
done: number,
/**
 * Operators in all.
 */
of: number,
/**
 * Searches for a place made since there is this ranking, those that were known not counted.
 */
searches: number, };

/**
 * One operator against the leaf.
 */
export type RankedOperator = {
/**
 * Its place in the host's list, from 0.
 */
index: number,
/**
 * Its id.
 */
id: string,
/**
 * Its rated torque, N·m.
 */
rated_torque_n_m: number,
/**
 * Whether it will do, where the arm stands or at its best place. About torque, its maker's limits and where it stands; no more is said.
 */
does: boolean,
/**
 * The one reason why not; `null` where it does.
 */
refusal: OperatorRefusal | null,
/**
 * The larger reserve of the places where it does, or of all where it does nowhere; `null` where nothing is demanded or it has no place.
 */
reserve: number | null,
/**
 * With the arm of the job; `null` where the job has none, or one that does not work.
 */
as_placed: Standing | null,
/**
 * Whether a place was looked for, and found.
 */
place: PlaceSought,
/**
 * At its best place here, with its own arm; `null` unless found.
 */
best: Standing | null,
/**
 * Most a leaf of this length may weigh, kg; `null` where its maker says nothing, or makes it for none so long.
 */
leaf_limit_kg: number | null,
/**
 * Cycles an hour and a day it is rated for in this air; `null` where its maker says nothing.
 */
rated_cycles: [number | null, number | null], };

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
 * Demand of steady movement over peak torque; `null` where the peak torque is unknown. With start and inertia it stands in the motion's own
 * `peak_utilisation`.
 */
peak_utilisation: number | null, };

/**
 * A typed text that could not be understood.
 */
export type ReadError = {
/**
 * Why.
 */
code: ReadErrorCode,
/**
 * What an ambiguous text may mean, in the document's unit: the comma grouping thousands, the comma marking decimals.
 */
readings: [number, number] | null, };

/**
 * Why a typed text is not a number of the wanted quantity.
 */
export type ReadErrorCode = "empty" | "not_a_number" | "ambiguous";

/**
 * What was read of a list.
 */
export type ReadOperators = {
/**
 * What the list is called.
 */
title: string | null,
/**
 * Entries that can be used, in the list's order.
 */
operators: Array<ListEntry>,
/**
 * Entries that cannot, each with all its faults; or the title, or the whole list, by its path.
 */
left_out: Array<LeftOut>,
/**
 * What was taken and is hardly meant: keys that are not known (`example` is the known one most like it), torques that may be kN·m.
 */
warnings: Array<Fault>, };

/**
 * What was built, re-planned where it stands.
 */
export type Rebuilt = {
/**
 * The arm as built.
 */
arm: Arm,
/**
 * Its figures, the shaft where it is; `null` where it does not work.
 */
fitted: Fitted | null,
/**
 * Peak shaft torque, N·m.
 */
shaft_torque_n_m: number | null,
/**
 * Shaft angle from closed to open, degrees, signed.
 */
shaft_travel_deg: number | null,
/**
 * Link that gives the planned straightness back on this pad, bracket and crank, m; `null` where that is none.
 */
link_for_straightness_m: number | null,
/**
 * Why it does not work.
 */
fault: Fault | null, };

/**
 * The commissioning record. What is absent was not measured, not tried or not signed. Other entries are carried and not looked at.
 */
export type Record = {
/**
 * Shaft angle between the two limits as they were set, degrees.
 */
shaft_travel_deg: number | null,
/**
 * Leaf angle at the open limit, degrees from closed.
 */
open_leaf_deg: number | null,
/**
 * From start to stop when opening, s.
 */
opening_s: number | null,
/**
 * From start to stop when closing, s.
 */
closing_s: number | null,
/**
 * Pause before it closed by itself, s.
 */
close_timer_s: number | null,
/**
 * Steady pull that keeps the leaf opening, arm disconnected, calm air, N.
 */
pull_open_n: number | null,
/**
 * The same closing.
 */
pull_close_n: number | null,
/**
 * Hinge axis to where it was pulled, m; default the leaf's length.
 */
pull_radius_m: number | null,
/**
 * Leaf angle at which it was pulled, degrees; default half open.
 */
pull_leaf_deg: number | null,
/**
 * Push at which the drive slipped, half open, opening, N.
 */
slip_open_n: number | null,
/**
 * The same closing.
 */
slip_close_n: number | null,
/**
 * Dynamic force on the closing edge by a calibrated instrument, N.
 */
dynamic_force_n: number | null,
/**
 * Static force there, N.
 */
static_force_n: number | null,
/**
 * Voltage at the motor while it runs, V.
 */
motor_v: number | null,
/**
 * Resistance of the earth rod, Ω.
 */
rod_ohm: number | null,
/**
 * Whether the isolator was tried and cuts every pole.
 */
isolation_tried: boolean | null,
/**
 * Whether it was locked off and tried.
 */
lock_off_tried: boolean | null,
/**
 * Whether every means of protection was tried, opening and closing.
 */
devices_tested: boolean | null,
/**
 * Whether the manual release was tried.
 */
release_tried: boolean | null,
/**
 * Whether the signs are fixed on both faces.
 */
signs_fixed: boolean | null,
/**
 * Whether the owner was shown how to use, release and stop the gate.
 */
owner_instructed: boolean | null,
/**
 * Number of the sheet.
 */
number: string | null,
/**
 * Its revision.
 */
revision: string | null,
/**
 * Its date, `YYYY-MM-DD`.
 */
date: string | null,
/**
 * Name of the installer who signs.
 */
installer: string | null,
/**
 * When the installer signed, `YYYY-MM-DD`.
 */
installer_date: string | null,
/**
 * Name of the owner who signs.
 */
owner: string | null,
/**
 * When the owner signed, `YYYY-MM-DD`.
 */
owner_date: string | null, };

/**
 * Why an operator will not do. Sentences live with the page, under the code.
 */
export type RefusalCode = "leaf_too_long" | "leaf_too_heavy" | "too_cold" | "too_hot" | "cycles_per_hour" | "cycles_per_day" | "crank_outside_kit" | "link_outside_kit" | "travel_too_long" | "arm_meets_obstacle" | "arm_meets_leaf" | "stands_in_obstacle" | "leaf_meets_operator" | "torque_over_rated" | "motion_over_peak_torque" | "reserve_too_small" | "no_place" | "no_arm";

/**
 * A change that might open the window.
 */
export type Remedy = {
/**
 * The change.
 */
change: RemedyKind,
/**
 * The change made with it; `null` where it is tried alone.
 */
with: RemedyKind | null,
/**
 * Least slip torque then, N·m.
 */
least_slip_n_m: number,
/**
 * Highest slip torque then, N·m; `null` where no limit is left.
 */
highest_slip_n_m: number | null,
/**
 * Whether it opens the window.
 */
opens: boolean, };

/**
 * Changes that are tried.
 */
export type RemedyKind = "slower_ramp" | "lighter_leaf" | "less_wind" | "other_operator" | "stronger_part";

/**
 * Plain hinges on a ramp: the leaf rises evenly as it opens, and wants to fall shut. The collar slides on the ramp, at its mean radius of
 * friction; a ramp so steep that it binds at the upper end of the friction is refused.
 */
export type RisingHinges = {
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
 * Coefficient of friction; unless `pairing` says what slides on what.
 */
friction_coefficient: number | null,
/**
 * What slides on what: a handbook range.
 */
pairing: Pairing | null,
/**
 * Lower end of the coefficient.
 */
friction_low: number | null,
/**
 * Upper end of the coefficient.
 */
friction_high: number | null,
/**
 * How the collar carries; default uniform pressure, the careful case.
 */
collar: Collar | null,
/**
 * Rise of the leaf from closed to open, m; negative where it falls open.
 */
rise_m: number, };

/**
 * Two rolling radial bearings a spacing apart, and a thrust bearing of the same radius.
 */
export type RollingHinges = {
/**
 * Vertical distance between the hinges, m.
 */
spacing_m: number,
/**
 * Half the bore of the bearings, m.
 */
pin_radius_m: number,
/**
 * Coefficient of friction; unless `pairing` says what slides on what.
 */
friction_coefficient: number | null,
/**
 * What slides on what: a handbook range.
 */
pairing: Pairing | null,
/**
 * Lower end of the coefficient.
 */
friction_low: number | null,
/**
 * Upper end of the coefficient.
 */
friction_high: number | null, };

/**
 * Solid round bar.
 */
export type RoundBar = {
/**
 * Density, kg/m³; default 7850 (steel).
 */
density_kg_m3: number | null,
/**
 * Where the pieces sit.
 */
place: MemberPlace,
/**
 * Diameter, m.
 */
face_m: number, };

/**
 * Round tube.
 */
export type RoundTube = {
/**
 * Density, kg/m³; default 7850 (steel).
 */
density_kg_m3: number | null,
/**
 * Where the pieces sit.
 */
place: MemberPlace,
/**
 * Outer diameter, m.
 */
face_m: number,
/**
 * Wall, m.
 */
wall_m: number, };

/**
 * Lengths by the rule of thumb, or why there are none.
 */
export type RuleOfThumb = {
/**
 * The arm; `null` where shaft and bracket leave no room for one, or where it would not pass through the swing.
 */
arm: Arm | null,
/**
 * The length that is short, and by how much, m; `null` where none is.
 */
short: [ShortLength, number] | null, };

/**
 * The leaf at one time of a run.
 */
export type RunPoint = {
/**
 * Time from the start, s.
 */
time_s: number,
/**
 * Leaf angle from closed, degrees.
 */
leaf_deg: number,
/**
 * Speed of the latch edge, m/s, magnitude.
 */
edge_speed_m_s: number,
/**
 * Torque at the operator's shaft, N·m, signed like the shaft angle.
 */
shaft_torque_n_m: number, };

/**
 * What a sensor senses, seen from above: a beam, a mat or a strip is a line widened to both sides; a point is a line of no length.
 */
export type SensedArea = {
/**
 * What it is fixed to.
 */
on: SensorFrame,
/**
 * One end, m: along the closed leaf from the hinge axis, or along the leaf.
 */
from_x_m: number,
/**
 * The same end, m: square to the closed leaf from the hinge axis, towards the opening side, or square to the leaf as it turns.
 */
from_y_m: number,
/**
 * The other end, m.
 */
to_x_m: number,
/**
 * The other end, m.
 */
to_y_m: number,
/**
 * Half of what it is wide, m; default 0.05.
 */
half_width_m: number | null, };

/**
 * The reserve with one input changed, all others as they are.
 */
export type Sensitivity = {
/**
 * Path of the input.
 */
path: string,
/**
 * How far it was changed, as a fraction of its value; for a friction with a range of its own, up to its upper end.
 */
fraction: number,
/**
 * Reserve with the input lowered; `null` where that job is invalid (the arm no longer closes) or nothing is demanded.
 */
low: number | null,
/**
 * Reserve with the input raised.
 */
high: number | null, };

/**
 * What a sensor is fixed to.
 */
export type SensorFrame = "ground" | "leaf";

/**
 * What one sensor reaches.
 */
export type SensorReach = {
/**
 * Number of the means in the job's list.
 */
means: number,
/**
 * Zones that count, in their order, and how far each is from what is sensed.
 */
zones: Array<ZoneGap>,
/**
 * Leaf angles at which the latch edge is within what is sensed.
 */
edge: Array<AngleSpan>, };

/**
 * What a set-out may choose from, and what it has to keep. Ranges are `[least, most]`, bounds included; equal bounds fix a value.
 * A limit that is not said (`None`) is none, and is listed as assumed.
 */
export type SetOut = {
/**
 * Shaft along the closed leaf from the hinge line, m.
 */
shaft_x_m: [number, number],
/**
 * Shaft square to the closed leaf from the axis line, towards the side the leaf opens to, m.
 */
shaft_y_m: [number, number],
/**
 * Bracket pin along the leaf from the hinge line of the closed leaf, m.
 */
bracket_u_m: [number, number],
/**
 * Bracket pin square to the leaf from the axis line of the closed leaf, on its opening side, m; one value, as the bracket's depth is bought
 * and not chosen.
 */
bracket_v_m: number,
/**
 * Crank, m.
 */
crank_m: [number, number],
/**
 * Link, m.
 */
link_m: [number, number],
/**
 * Distance from shaft to bracket when closed over `crank + link`: 1 is a straight arm; default [0, 1].
 */
straightness: [number, number] | null,
/**
 * How far the angle between link and leaf may be from 90° when open, degrees; default 90, which is no limit.
 */
square_deg: number | null,
/**
 * Least lever of the link about the hinge from a tenth of the swing on, m; default 0.
 */
least_lever_m: number | null,
/**
 * Most the shaft may turn from closed to open, degrees; default 360.
 */
shaft_travel_deg: number | null,
/**
 * Most shaft torque, N·m: a limit beside the aim; default none.
 */
most_shaft_torque_n_m: number | null,
/**
 * Shaft offsets, bracket and lengths are whole multiples of it, m: what a tape can set; none unless given.
 */
step_m: number | null,
/**
 * Whether every error of the tape within that of the block `tape` has to leave an arm that works and keeps `least_lever_m`,
 * `shaft_travel_deg` and its clearance; no unless said. Ranges, straightness and angle to the open leaf are the planned arm's alone.
 */
tape_proof: boolean | null,
/**
 * Gust against which the aim `least_link_force` holds the leaf, m/s; default the working gust.
 */
storm_speed_m_s: number | null,
/**
 * Side of the elbow; default either.
 */
elbow: ElbowChoice | null,
/**
 * What is to be as small as possible; default the shaft torque.
 */
aim: Aim | null,
/**
 * Where the shaft would best stand, for the aim `nearest_place`.
 */
place: Place | null, };

/**
 * What a search found.
 */
export type SetOutAnswer = {
/**
 * The set-out that serves the aim best; `null` where none keeps every limit.
 */
best: Stand | null,
/**
 * Other local optima that keep every limit, the best first; empty on a lattice.
 */
others: Array<Stand>,
/**
 * Lengths by the rule of thumb with the arm straight when closed, for the best's shaft and bracket; to stand beside it.
 */
rule_of_thumb: RuleOfThumb | null,
/**
 * Where there is no best: the set-out that comes nearest, and what is in the way.
 */
nearest: Nearest | null,
/**
 * With `tape_proof`: the best without it, so that its torque beside that of `best` is what the proof costs; `null` where there is none either.
 */
without_proof: Stand | null | null, };

/**
 * What is set at the first power-up and nothing else in the job says.
 */
export type Settings = {
/**
 * Pause before the gate closes by itself, s, 0 where it does not; unknown unless given.
 */
close_timer_s: number | null, };

/**
 * How urgent a finding is.
 */
export type Severity = "stop" | "look" | "note";

/**
 * Where a limit is set.
 */
export type ShaftLimit = {
/**
 * Leaf angle, degrees.
 */
leaf_deg: number,
/**
 * Shaft angle from closed, degrees, signed: counter-clockwise positive.
 */
shaft_deg: number,
/**
 * Direction of the crank from the closed leaf, degrees, above −180 to 180.
 */
crank_direction_deg: number, };

/**
 * Shaft angles to set, degrees from closed, signed like the shaft angle.
 */
export type ShaftLimits = {
/**
 * Closed limit.
 */
closed_deg: number,
/**
 * Open limit.
 */
open_deg: number,
/**
 * Start of the slow zone when opening; the open limit where there is none.
 */
slow_opening_from_deg: number,
/**
 * Start of the slow zone when closing; the closed limit where there is none.
 */
slow_closing_from_deg: number,
/**
 * Leaf angle there when opening, degrees.
 */
slow_opening_leaf_deg: number,
/**
 * Leaf angle there when closing, degrees.
 */
slow_closing_leaf_deg: number,
/**
 * Shaft speed in the slow zones, degrees a second.
 */
slow_speed_deg_s: number, };

/**
 * Torque at one speed, at the operator's shaft.
 */
export type ShaftTorque = {
/**
 * Speed, rad/s.
 */
speed_rad_s: number,
/**
 * Torque, N·m.
 */
torque_n_m: number, };

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
 * Sheet over a part of the leaf.
 */
export type Sheet = {
/**
 * Density, kg/m³; default 7850 (steel).
 */
density_kg_m3: number | null,
/**
 * Where it sits; needs a height.
 */
place: MemberPlace,
/**
 * Thickness, m.
 */
thickness_m: number, };

/**
 * Which length the rule finds no room for.
 */
export type ShortLength = "crank_m" | "link_m";

/**
 * The place the gate stands at.
 */
export type Site = {
/**
 * Whether the public, guests or customers use the gate; unknown unless said.
 */
public: boolean | null,
/**
 * Whether security staff watch it and keep others away; unknown unless said.
 */
guarded: boolean | null,
/**
 * How many families live behind it, 0 where it serves no home; unknown unless said.
 */
homes: number | null,
/**
 * Whether people on foot have a way of their own; unknown unless said.
 */
pedestrian_way: boolean | null,
/**
 * Whether there is a warning sign on both faces; unknown unless said.
 */
signs_both_faces: boolean | null,
/**
 * Gap between the closed leaf's edge and what it closes on, m; default 0.
 */
latch_gap_m: number | null,
/**
 * Means of protection that are fitted.
 */
means: Array<Means> | null, };

/**
 * Slipping at one leaf angle.
 */
export type SlipPoint = {
/**
 * Leaf angle, degrees.
 */
leaf_deg: number,
/**
 * Push square to the leaf that opens it against a drive that is off, N; `null` at a dead point, where none does.
 */
push_open_n: number | null,
/**
 * The same closing it.
 */
push_close_n: number | null,
/**
 * Force of the latch edge on what blocks it while the drive slips, N.
 */
edge_force_n: number | null,
/**
 * Force in link and bracket while a push slips the drive, N.
 */
link_force_n: number | null,
/**
 * Whether the arm is in its toggle zone.
 */
toggle: boolean, };

/**
 * Snow that the leaf would push: a measure of size.
 */
export type SnowInTheWay = {
/**
 * Its depth above the leaf's lower edge, m.
 */
depth_m: number,
/**
 * Rough moment about the hinge of pushing it, settled, N·m.
 */
moment_n_m: number, };

/**
 * Where a published number comes from.
 */
export type Source = {
/**
 * Standard and edition; empty for common practice.
 */
name: string,
/**
 * How it was come by.
 */
provenance: SourceProvenance,
/**
 * Whether a later edition is in force.
 */
superseded: boolean, };

/**
 * How a published number was come by.
 */
export type SourceProvenance = "seen" | "from_memory" | "doubtful" | "common_practice";

/**
 * What a slipping drive has to spare.
 */
export type SparedPart = "leaf" | "link" | "bracket" | "gearbox";

/**
 * A place to stand the operator with its arm, and what that comes to.
 */
export type Stand = {
/**
 * Peak shaft torque of its plan, N·m.
 */
shaft_torque_n_m: number,
/**
 * Rated torque over it; `null` where nothing is demanded.
 */
reserve: number | null,
/**
 * Largest force in the link over the swing against the storm gust, N; against the working gust where no storm is given.
 */
link_force_n: number,
/**
 * Shaft angle from closed to open, degrees.
 */
shaft_travel_deg: number,
/**
 * Least lever from a tenth of the swing on, m.
 */
least_lever_m: number,
/**
 * Distance from shaft to bracket when closed over crank + link.
 */
straightness: number,
/**
 * How far the link is from square to the open leaf, degrees, positive where the bracket end leans towards the latch.
 */
off_square_deg: number,
/**
 * Least distance of the arm's edge from what stops it, m, over the swing; `null` where nothing does.
 */
clearance_m: number | null,
/**
 * Least reserve at the 64 corners of the tape's errors, of the best of a search with `tape_proof`; `null` where nothing is demanded.
 */
worst_reserve: number | null | null,
/**
 * What else becomes of it there.
 */
at_corners: AtCorners | null,
/**
 * Shaft along the closed leaf from the hinge line, m.
 */
shaft_x_m: number,
/**
 * Shaft square to the closed leaf from the axis line, towards the side the leaf opens to, m.
 */
shaft_y_m: number,
/**
 * Bracket pin along the leaf from the hinge line of the closed leaf, m.
 */
bracket_u_m: number,
/**
 * Bracket pin square to the leaf from the axis line of the closed leaf, on its opening side, m.
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
 * An operator on an arm.
 */
export type Standing = {
/**
 * The arm.
 */
arm: Arm,
/**
 * The largest shaft torque of the plan, N·m.
 */
shaft_torque_n_m: number,
/**
 * Leaf angle there, degrees.
 */
leaf_deg: number,
/**
 * That torque against its ratings.
 */
rating: Rating,
/**
 * Gust at which it runs out.
 */
wind_limit: WindLimit,
/**
 * Angle its shaft turns from closed to open, degrees.
 */
shaft_travel_deg: number,
/**
 * Time to open, s, with the job's ramps and slow zones, or the usual ones where it says none; `null` where its speed is not known.
 */
opening_s: number | null,
/**
 * Time to close, s.
 */
closing_s: number | null,
/**
 * Cycles against its rating, where the job says how many.
 */
duty: DutyUse | null,
/**
 * Least distance of its body and base from leaf and obstacles, m; `null` where there is nothing to keep clear of, or nothing to keep clear.
 */
clearance_m: number | null,
/**
 * Why it will not do here; `null` where it does.
 */
refusal: OperatorRefusal | null, };

/**
 * One thing tried or done.
 */
export type Step = {
/**
 * Path of the answer in the job.
 */
path: string,
/**
 * The answer; `null` where there is none.
 */
done: boolean | null,
/**
 * The verdict.
 */
verdict: CheckVerdict, };

/**
 * What an obstacle stops.
 */
export type Stopped = "pad" | "arm" | "leaf";

/**
 * Magnitudes of what the wind alone does; it may come from either side, and then all of them change sign together. A lean or a ramp adds to it:
 * see [`super::Holding`].
 */
export type Storm = {
/**
 * The storm as it is reckoned with.
 */
gust: Gust,
/**
 * Where it comes from; empty for what was typed.
 */
sources: Array<Source>,
/**
 * Force of the wind on the leaf, N.
 */
force_n: number,
/**
 * Moment about the hinge on the closed leaf, N·m.
 */
wind_n_m: number,
/**
 * Moment-equivalent force, N: what has this moment at the wind area's centre. More than the force itself where a standard's shape puts the
 * resultant towards the latch edge.
 */
wind_n: number,
/**
 * Force in the link, N: the arm alone holds the leaf, no latch.
 */
link_force_n: number,
/**
 * Part of the link's force along the leaf, N.
 */
bracket_along_n: number,
/**
 * Part of the link's force square to the leaf, N.
 */
bracket_across_n: number,
/**
 * Horizontal force on the hinges together, N.
 */
hinge_n: number,
/**
 * Torque that holds the shaft, `η·T_leaf/n`, N·m; 0 at a dead point, where the arm holds by its shape and is no lock.
 */
shaft_torque_n_m: number,
/**
 * The same leaf away from closed: half open, open, where the shaft has most to hold. A lean and a ramp are in it.
 */
stranded: Stranded, };

/**
 * The leaf away from closed in the storm.
 */
export type Stranded = {
/**
 * Half of the swing.
 */
half_open: HeldLeaf,
/**
 * All of it.
 */
open: HeldLeaf,
/**
 * Where the shaft has most to hold.
 */
worst: HeldLeaf,
/**
 * The lesser of what the drive at a stand holds and what slips the clutch, N·m; `null` where neither is known.
 */
limit_n_m: number | null,
/**
 * Which of the two that is; `null` where neither is known.
 */
limit_by: HoldingLimit | null, };

/**
 * What a finding, and so a judgement, is about.
 */
export type Subject = "torque" | "arm" | "tape" | "clearances" | "motion" | "breakaway" | "storm" | "people" | "as_built" | "record";

/**
 * A change with which an operator does.
 */
export type Suggestion = {
/**
 * What is changed. Sentences live with the page, under the name.
 */
kind: SuggestionKind,
/**
 * Numbers for the sentence.
 */
values: Array<NamedValue>,
/**
 * The arm with which it was held against the leaf so changed, and does.
 */
arm: Arm,
/**
 * The reserve it then leaves; `null` where nothing is demanded.
 */
reserve: number | null, };

/**
 * What may be changed.
 */
export type SuggestionKind = "another_place" | "less_wind_area" | "cut_into_boards" | "lighter_leaf" | "slower_ramps" | "fewer_cycles_per_hour" | "fewer_cycles_per_day";

/**
 * What an operator is fed with, and what it takes.
 */
export type Supply = {
/**
 * Voltage of the mains, V; none where it runs on a battery alone.
 */
mains_v: number | null,
/**
 * Voltage of the motor, V.
 */
motor_v: number | null,
/**
 * Current of the motor at rated torque, A.
 */
rated_current_a: number | null,
/**
 * Current of the motor at peak torque, A.
 */
peak_current_a: number | null,
/**
 * Current at rest, from the mains or the battery it runs on, A.
 */
standby_current_a: number | null,
/**
 * Most it takes from the mains, W.
 */
most_power_w: number | null, };

/**
 * How far the leaf opens.
 */
export type Swing = {
/**
 * Leaf angle fully open, degrees from closed.
 */
open_deg: number, };

/**
 * The system of units a person reads and types in.
 */
export type System = "metric" | "us";

/**
 * How far what is set differs from what was planned.
 */
export type Tape = {
/**
 * Error of each dimension of the arm, either way, m; default 0.005 (common practice, no source).
 */
error_m: number | null,
/**
 * How the link comes to its length; default cut.
 */
link: TapeLink | null,
/**
 * Error of a link that is set last, either way, m; needed where it is. A cut link has that of the others.
 */
link_error_m: number | null, };

/**
 * What a tape error costs.
 */
export type TapeCost = {
/**
 * Error of each dimension either way, m.
 */
error_m: number,
/**
 * Error of the link alone where it is set last, m.
 */
link_error_m: number | null,
/**
 * The planned arm.
 */
planned: Fitted,
/**
 * Each dimension by itself, those whose error breaks the arm first, then by what it does to the reserve.
 */
dimensions: Array<DimensionCost>,
/**
 * The dimension to measure twice: the first of those.
 */
measure_twice: string,
/**
 * All errors at once, as they come together worst.
 */
worst: WorstCase, };

/**
 * How the link comes to its length.
 */
export type TapeLink = "cut" | "set_last";

/**
 * Terrain category.
 */
export type Terrain = "0" | "I" | "II" | "III" | "IV";

/**
 * A largest torque and where it falls.
 */
export type TimedTorque = {
/**
 * Magnitude, N·m.
 */
shaft_torque_n_m: number,
/**
 * Time from the start, s.
 */
time_s: number,
/**
 * Leaf angle, degrees.
 */
leaf_deg: number, };

/**
 * Pushes that try the slip torque.
 */
export type Trial = {
/**
 * Leaf angle, degrees.
 */
leaf_deg: number,
/**
 * Hinge axis to where it is pushed, m.
 */
radius_m: number,
/**
 * A push that must not slip it, N, either way.
 */
must_hold_n: number,
/**
 * A push that must slip it, N, either way; `null` without limits.
 */
must_slip_n: number | null,
/**
 * The push at which the slip torque that is set slips, opening, N.
 */
set_open_n: number | null,
/**
 * The same closing.
 */
set_close_n: number | null, };

/**
 * Square or rectangular tube.
 */
export type Tube = {
/**
 * Density, kg/m³; default 7850 (steel).
 */
density_kg_m3: number | null,
/**
 * Where the pieces sit.
 */
place: MemberPlace,
/**
 * Side the wind sees, m.
 */
face_m: number,
/**
 * Other side, m; default the same.
 */
depth_m: number | null,
/**
 * Wall, m.
 */
wall_m: number,
/**
 * Corner rule; default EN 10219.
 */
corners: CornerRule | null, };

/**
 * A part of two tubes of one length, one in the other, joints at the ends.
 */
export type Tubes = {
/**
 * Pivot to pivot, m.
 */
pivots_m: number,
/**
 * Length to cut each of the two to, `(pivots − ends + overlap)/2`, m; `null` where the overlap leaves no length to set.
 */
cut_m: number | null, };

/**
 * Why a subject is not judged.
 */
export type Unjudged = "not_asked" | "begun" | "not_measured";

/**
 * Class of a powered vehicular gate by who comes near it. Source: ASTM F2200-20, abstract (the same in UL 325).
 */
export type UseClass = "I" | "II" | "III" | "IV";

/**
 * Within the torque rating or not; no more than that is said.
 */
export type Verdict = "over" | "tight" | "within";

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
 * Whether the plan view shows the zones that can catch a person, and what stands around.
 */
zones: boolean,
/**
 * Whether the plan view is what is marked out: the closed arm alone, every mark with its number.
 */
marks: boolean,
/**
 * What the plan view shows: all of the gate, or the arm as large as it will go, a long leaf cut short.
 */
part: "gate" | "arm",
/**
 * Whether the curve shows what the drive holds back with the wind behind, and what holds the leaf at a stand.
 */
overrun: boolean,
/**
 * The run that is followed through time, by its place in the core's list.
 */
run: "opening" | "closing" | "motor_opening" | "motor_closing",
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
 * A gust at the gate: plain, or by a standard or a Beaufort number. The same block describes the working wind and the storm.
 */
export type Wind = {
/**
 * Gust speed at the gate, m/s; unless `from` says where the gust comes from.
 */
speed_m_s: number | null,
/**
 * Force coefficient of the wind area; unless `shape` says what the leaf looks like to the wind.
 */
force_coefficient: number | null,
/**
 * Air density, kg/m³; default 1.225 (International Standard Atmosphere, sea level).
 */
air_density_kg_m3: number | null,
/**
 * Plan direction a wind of fixed bearing blows towards, in the frame of the closed leaf, degrees. The plan then shows that wind too.
 */
bearing_deg: number | null,
/**
 * Where the gust comes from.
 */
from: WindFrom | null,
/**
 * What the leaf looks like to the wind.
 */
shape: WindShape | null, };

/**
 * Where a gust comes from.
 */
export type WindFrom = { "kind": "beaufort" } & BeaufortWind | { "kind": "asce7" } & Asce7Wind | { "kind": "en1991" } & En1991Wind;

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
 * Whether there is a limit in the range searched.
 */
export type WindLimitState = "found" | "over_without_wind" | "no_wind_load" | "above_search";

/**
 * What the leaf looks like to the wind. Needs the leaf's height.
 */
export type WindShape = { "kind": "asce7_wall" } & Asce7Wall | { "kind": "asce7_open" } & Asce7Open | { "kind": "en1991_wall" } & En1991Wall | { "kind": "en1991_lattice" } & En1991Lattice;

/**
 * Whether there is a slip torque that does both.
 */
export type WindowState = "open" | "shut" | "no_limit";

/**
 * The working wind.
 */
export type WorkingWind = {
/**
 * The gust as it is reckoned with.
 */
gust: Gust,
/**
 * Highest Beaufort number whose gust, by the job's two factors, is within the wind limit; `null` where the job names no such factors or
 * there is no limit.
 */
limit_beaufort: number | null,
/**
 * Cases of the standard that are left out.
 */
excluded: Array<string>,
/**
 * Where pressure, shape and the law of a slanting wind come from; empty for what was typed.
 */
sources: Array<Source>,
/**
 * The wind of fixed bearing, where the job has one.
 */
bearing: BearingWind | null, };

/**
 * The worst of all errors at once.
 */
export type WorstCase = {
/**
 * Least reserve.
 */
reserve: number | null,
/**
 * Directions of the crank closed, least and most, degrees.
 */
closed_deg: [number, number],
/**
 * Directions of the crank open, least and most, degrees.
 */
open_deg: [number, number],
/**
 * Straightness, least and most.
 */
straightness: [number, number],
/**
 * Bend when closed, least and most, degrees.
 */
bend_deg: [number, number],
/**
 * Link from square to the open leaf, least and most, degrees.
 */
off_square_deg: [number, number],
/**
 * How many of the 64 corners of the box of errors have an arm that does not work.
 */
broken: number, };

/**
 * One zone, at the leaf angle where it is worst.
 */
export type Zone = {
/**
 * What closes on what.
 */
kind: ZoneKind,
/**
 * Movements in which the gap shrinks.
 */
directions: Array<Direction>,
/**
 * Least gap, m, 0 where the parts would touch; `null` where the job does not say enough.
 */
gap_m: number | null,
/**
 * Leaf angle there, degrees.
 */
leaf_deg: number,
/**
 * Place in plan, m.
 */
x_m: number,
/**
 * Place in plan, m.
 */
y_m: number,
/**
 * Whether it counts as a zone of entrapment: the gap is not known, or closes to less than the free gap.
 */
present: boolean,
/**
 * Gap at which it would not count, m: that of the part of the body that can be there.
 */
free_gap_m: number,
/**
 * The obstacle's place in `obstacles`, from 0.
 */
obstacle: number | null,
/**
 * Whether it is the operator's body that the leaf closes on.
 */
at_operator: boolean,
/**
 * Where the free gap comes from.
 */
source: Source, };

/**
 * How far a zone is from what a sensor senses.
 */
export type ZoneGap = {
/**
 * Number of the zone in the plan's list.
 */
zone: number,
/**
 * Kind of the zone.
 */
kind: ZoneKind,
/**
 * Distance from its place, at the leaf angle where it is worst, to what is sensed, m; 0 within it.
 */
gap_m: number, };

/**
 * What closes on what.
 */
export type ZoneKind = "leading_edge_closing" | "leading_edge_opening" | "hinge_side" | "bottom" | "elbow" | "arm_scissors" | "behind_leaf";
