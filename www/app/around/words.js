/** Words of what stands around, in the order a person meets them. */

/** Sides of an obstacle and how high it is: paths below it. */
export const SIDES = ["x_m.0", "x_m.1", "y_m.0", "y_m.1", "height_m"];

/** What it is. */
export const OBSTACLE_KINDS = ["post", "wall", "kerb", "other"];

/** What cannot stand or pass there. */
export const STOPPED = ["pad", "arm", "leaf"];

/** Numbers of leaf and arm that are asked for beside what stands around. */
export const BODIES = ["leaf.face_m", "leaf.thickness_m", "leaf.heel_m", "arm_half_width_m"];
