/** Evidence that leaves more than this share of an assumed figure's variance does not replace it [-]. Common practice, no source. */
export const mostAssumedShare = 0.1;
