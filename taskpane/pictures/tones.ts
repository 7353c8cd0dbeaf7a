/** Tones of charts, in the order of their series: at least 3 to 1 against a white and against a dark page alike. */
export const tones = ["#1f7db8", "#c0561a", "#3c8550", "#8a63b8", "#94741c", "#c2528f"] as const;
