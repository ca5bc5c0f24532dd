/**
 * Volts become sound: devices, sample packing, the player, the recorder and WAV files.
 *
 * <p>The way of a sample: a {@link understudy.wave.VoltSource} gives volts; {@link understudy.audio.OutputStage} makes
 * them fractions of full scale, fades, limits and packs them; {@link understudy.audio.LineWriter} hands the bytes to an
 * {@link understudy.audio.OutputLine}, or {@link understudy.audio.WavRender} hands them to a file.
 *
 * <table>
 * <caption>Threads</caption>
 * <tr><th>name</th><th>owner</th><th>may it block</th></tr>
 * <tr><td>audio-writer</td><td>Player</td><td>in the line's write only; allocates nothing while it plays</td></tr>
 * <tr><td>audio-watchdog</td><td>Player</td><td>never; reads what the writer publishes</td></tr>
 * <tr><td>audio-route</td><td>Player</td><td>on the sound server's answer; nobody waits for it</td></tr>
 * <tr><td>audio-closer</td><td>whoever ends a line</td><td>for ever; given up after two seconds</td></tr>
 * <tr><td>audio-reader</td><td>Recorder</td><td>in the line's read and the file's write</td></tr>
 * </table>
 */
package understudy.audio;
