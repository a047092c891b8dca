/** Sizes and weights are points, everything else is millimetres. */
export const mmPerPoint = 25.4 / 72;
