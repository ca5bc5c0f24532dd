package understudy.calibrate;

import understudy.audio.DeviceChoice;

/**
 * One channel of an audio output that is calibrated.
 *
 * @param output  opened so
 * @param channel counted from 0
 * @param level   of full scale, above 0, up to 1
 */
public record TestedOutput(DeviceChoice output, int channel, double level) {}
