// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

/**
 * A procedure. A plug-in: a class with {@code @Component} that implements this and keeps nothing between calls, since one instance serves
 * many runs on any thread.
 *
 * <pre>{@code
 * @Component
 * public final class Hum implements Measurement {
 *     public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
 *             throws MeasurementException, InterruptedException {
 *         bench.feed(new Feed.Silence());
 *         Acquisition quiet = bench.acquire(settings.number("seconds"));
 *         progress.recorded(quiet);
 *         return MeasurementResult.of(Figure.of(HUM, level(quiet)));
 *     }
 * }
 * }</pre>
 */
public interface Measurement {
    /** Returns what it is; always the same. */
    MeasurementInfo info();

    /** Returns whether it can be made of a subject; at once, without a bench. */
    Readiness readiness(Subject subject);

    /**
     * Makes it. Load, mode and supply volts of the subject's step are set already. It calls {@link Progress#checkpoint} at least once a
     * second, leaves the feed silent, and opens no threads that outlive it.
     *
     * @param subject what is measured
     * @param settings values for the measurement's settings
     * @param bench has all that {@link MeasurementInfo#needs} names
     * @param progress hears of it
     * @throws MeasurementException when it cannot be finished; the message says why and what to do
     * @throws InterruptedException when it was told to end
     */
    MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException;
}
