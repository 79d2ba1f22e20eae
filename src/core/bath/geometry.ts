/**
 * Volume of a box tank [L], sides in cm.
 * @source platingCourse
 * @example
 * boxVolumeL(30, 15, 20) // => 9
 */
export const boxVolumeL = (lengthCm: number, widthCm: number, depthCm: number): number =>
  (lengthCm * widthCm * depthCm) / 1000;

/**
 * Wetted walls and floor of a box tank [dm²]; surface in cm, volume in L; depth = volume/surface.
 * @source platingCourse
 * @example
 * boxWallAreaDm2(30, 15, 6) // => 16.5
 */
export const boxWallAreaDm2 = (lengthCm: number, widthCm: number, volumeL: number): number => {
  const depthCm = (volumeL * 1000) / (lengthCm * widthCm);
  return (lengthCm * widthCm + 2 * (lengthCm + widthCm) * depthCm) / 100;
};

/**
 * Side of a cylinder without its ends [in the square of the unit of length]: π d h.
 * @source platingCourse
 * @example
 * cylinderSideArea(4, 30) // => 376.99
 */
export const cylinderSideArea = (diameter: number, height: number): number => Math.PI * diameter * height;

/**
 * Wetted wall and floor of a cylinder tank [dm²]; diameter in cm, volume in L; depth = volume/surface.
 * @source platingCourse
 * @example
 * cylinderWallAreaDm2(20, Math.PI) // => 9.424778
 */
export const cylinderWallAreaDm2 = (diameterCm: number, volumeL: number): number => {
  const floorCm2 = (Math.PI * diameterCm ** 2) / 4;
  return (floorCm2 + cylinderSideArea(diameterCm, (volumeL * 1000) / floorCm2)) / 100;
};
