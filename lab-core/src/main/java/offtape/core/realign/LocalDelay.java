package offtape.core.realign;

/**
 * How late the return is at one moment.
 *
 * @param frame when, frames of the original
 * @param late by how much later than the course it was read along, frames
 * @param variance of that, frames squared
 */
record LocalDelay(double frame, double late, double variance) {}
