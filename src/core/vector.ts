/** A place or direction in the room's frame, in metres: x to the camera's right, y away from the camera, z up. */
export type Vec3 = readonly [x: number, y: number, z: number];
