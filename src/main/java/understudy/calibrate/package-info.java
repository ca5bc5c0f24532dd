/** Proves an audio output: what full scale is worth in volts, and what the way to the jack does to a signal. */
package understudy.calibrate;
