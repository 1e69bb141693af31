/** The judgement needs random numbers. With one seed everywhere, screen, page and command line say the same of the same history. */
export const JUDGEMENT_SEED = 20_260_101;
