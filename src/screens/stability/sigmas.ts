/** How many standard uncertainties the bars and bands of this screen reach either way. */
export const SIGMAS = 2;
