//! The names of fields and the words of jobs, by number.

use alloc::vec::Vec;

/// Every name and word that a packed document writes as a number: the place in this list, counted from 0.
///
/// **Append-only.** Links that people have printed and sent depend on these places: a name is never moved, renamed or taken away,
/// also when jobs no longer use it. New names go to the end; a test holds the list to the one the released links were made with.
pub const NAMES: &str = "\
    schema title hand leaf hinges lean wind swing arm operator required_reserve samples entry record system assumed metric \
    us right left kind plain measured mass_kg length_m height_m wind_area_m2 mass_centroid_m wind_centroid_m inertia_kg_m2 \
    spacing_m pin_radius_m thrust_outer_radius_m thrust_inner_radius_m friction_coefficient angle_deg downhill_deg \
    speed_m_s force_coefficient air_density_kg_m3 open_deg shaft_x_m shaft_y_m bracket_u_m bracket_v_m crank_m link_m \
    elbow rated_torque_n_m peak_torque_n_m shaft_speed_deg_s arm_efficiency pull_open_n pull_close_n pull_radius_m \
    pull_leaf_deg as_built breakaway contact drag ground holding ice marks motion room setout site storm tape uncertainty \
    bracket_force_n gearbox_torque_n_m hold_factor leaf_moment_n_m link_force_n push_radius_m release_factor \
    slip_torque_n_m dynamic_limit_n edge_travel_m near_m response_s static_limit_n stiffness_n_per_m latch_deg latch_n_m \
    seal_n_m wheel_coefficient wheel_load_n wheel_radius_m bottom_rise_m gap_m joint_allowance_m slope_deg uphill_deg \
    collar friction_high friction_low pairing rise_m play_deg shaft_torque_n_m area_factor density_kg_m3 thickness_m \
    members corners depth_m face_m place section wall_m count from_m to_m pitch_m wire_m plumb_height_m plumb_offset_m \
    anchor_across_m anchor_along_m anchor_offset_across_m anchor_offset_along_m anchor_turn_deg arm_height_m crank_ends_m \
    crossbar_level_m link_ends_m overlap_m pad_level_m coast_drag_n_m duty motor ramp_down_s ramp_up_s slow_close_deg \
    slow_open_deg slow_speed_deg_s stop_stiffness_n_per_m cycles_per_day cycles_per_hour rated_cycles_per_day \
    rated_cycles_per_hour gear_efficiency gear_ratio no_load_speed_deg_s rated_v run_up_s stall_torque_n_m supply_v \
    arm_half_width_m back_m front_m heel_m hinge_post obstacles x_m y_m aim keep_out least_lever_m most_shaft_torque_n_m \
    shaft_travel_deg square_deg step_m storm_speed_m_s straightness guarded homes latch_gap_m leaf_half_thickness_m means \
    pedestrian_way public signs_both_faces direction monitored reaches bearing_deg from shape gust_factor height_factor \
    number clearance eccentric solidity bar_m bars returns shelter_factor error_m uniform_pressure uniform_wear \
    steel_steel_dry steel_steel_greased steel_bronze_dry steel_bronze_greased ptfe_lined rolling rising en10219 aisc tube \
    round_tube bar round_bar sheet boards mesh least_shaft_torque least_link_force least_shaft_travel nearest_place either \
    open close inherent non_contact inherent_force constant_pressure leading_edge_closing leading_edge_opening hinge_side \
    bottom arm_scissors behind_leaf beaufort asce7_wall flat round asce7_open en1991_wall 0 I II III IV B C D 7-05 7-10 \
    7-16 7-22 edition exposure directionality importance topographic gust_effect basic_m_s orography terrain \
    yearly_probability strength allowable asce7 en1991 level \
    area close_timer_s closing_s date devices_tested dynamic_force_n from_x_m from_y_m half_width_m installer \
    installer_date isolation_tried lock_off_tried motor_v on open_leaf_deg opening_s owner owner_date \
    owner_instructed release_tried revision rod_ohm settings signs_fixed slip_close_n slip_open_n static_force_n \
    to_x_m to_y_m hinge_axis leaf_face";

/// Places below this one take one byte; from it on, two: the first says which page of 256, the second the place on it.
pub const SHORT: u8 = 240;

/// Stands in place of a name that has no number: its text follows.
pub const SPELT: u8 = 255;

pub fn number_of(text: &str) -> Option<usize> {
    NAMES.split(' ').position(|name| name == text)
}

pub fn at(place: usize) -> Option<&'static str> {
    NAMES.split(' ').nth(place)
}

pub fn write(bytes: &mut Vec<u8>, place: usize) {
    match place.checked_sub(usize::from(SHORT)) {
        None => bytes.push(place as u8),
        Some(beyond) => bytes.extend([SHORT + (beyond / 256) as u8, (beyond % 256) as u8]),
    }
}
