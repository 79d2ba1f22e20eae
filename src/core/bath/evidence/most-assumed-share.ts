/** Evidence that leaves more than this share of an assumed figure's variance does not replace it. */
export const mostAssumedShare = 0.1;
