// @ts-check
// Power line that are met in the world's regions (IEC 60038 and national practice): hertz and volts.

export const REGIONS = [[50, 230], [50, 220], [60, 120], [60, 127], [60, 220], [50, 100], [60, 100]];
