/** Marking compound: a dark neutral tone, which is none of the marks' colours. */
export const COMPOUND = '#26323a'
