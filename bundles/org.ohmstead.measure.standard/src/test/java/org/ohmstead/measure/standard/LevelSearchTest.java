// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;

/** The search on curves of distortion whose crossing of 1 % is known by construction. */
class LevelSearchTest {
    private static Reading search(PatternBench bench, double ratedWatts) throws Exception {
        Rating[] ratings = ratedWatts > 0 ? new Rating[] {TestBench.rating(4, ratedWatts)} : new Rating[0];
        Subject subject = TestBench.subject(Mode.STEREO, TestBench.thd(0.01), ratings);
        Reading reading = TestBench.run(new PowerAtEndPoint(), subject, bench, new TestBench.Heard())
                .power()
                .orElseThrow();
        assertTrue(bench.fedDb().size() <= 12, bench.fedDb().toString());
        return reading;
    }

    /** Volts go with the drive: at a level the power is (40 V)^2 / 8 times that, plus what the harmonic adds. */
    private static double watts(double driveDb, double thdRatio) {
        return 200 * Math.pow(10, driveDb / 10) * (1 + thdRatio * thdRatio);
    }

    /** A soft amplifier: distortion of 1 % at -7.3 dB that rises by a factor of 10 in 20, 10 or 4 dB; no clipping is seen. */
    @ParameterizedTest
    @CsvSource({"20,0", "20,30", "10,0", "10,37", "10,120", "4,0", "4,36"})
    void closesInOnASmoothRise(double decadeDb, double ratedWatts) throws Exception {
        PatternBench bench = new PatternBench(driveDb -> 0.01 * Math.pow(10, (driveDb + 7.3) / decadeDb));
        ChannelReading channel = search(bench, ratedWatts).channels().get(0);
        assertEquals(EndPointOutcome.REACHED, channel.outcome());
        assertEquals(
                watts(-7.3, 0.01),
                channel.powerWatts(),
                0.002 * watts(-7.3, 0.01),
                bench.fedDb().toString());
    }

    /**
     * Noise that falls with the level, a hump of 1.8 % about -22 dB that goes away again, and the true end at -6.2 dB. The end is
     * sought from the level of least distortion upwards, which lies above the hump.
     */
    @Test
    void doesNotTakeAHumpForTheEnd() throws Exception {
        DoubleUnaryOperator curve = driveDb -> 0.002 * Math.pow(10, -(driveDb + 6.2) / 60)
                + 0.016 * Math.exp(-Math.pow((driveDb + 22) / 2.5, 2))
                + 0.008 * Math.pow(10, (driveDb + 6.2) / 3);
        PatternBench bench = new PatternBench(curve);
        Reading reading = search(bench, 0);
        ChannelReading channel = reading.channels().get(0);
        assertEquals(EndPointOutcome.REACHED, channel.outcome());
        assertTrue(channel.sweep().stream().anyMatch(point -> point.thdFRatio() > 0.01 && point.driveDb() < -15));
        assertEquals(
                watts(-6.2, 0.01),
                channel.powerWatts(),
                0.003 * watts(-6.2, 0.01),
                bench.fedDb().toString());
        assertTrue(
                reading.notes().toString().contains("passed more than once"),
                reading.notes().toString());
    }

    /** Readings that scatter by 5 % about a rise by a factor of 10 in 6 dB: 0.13 dB, 3 % of power, for one standard deviation. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void bearsReadingsThatScatter(long seed) throws Exception {
        Random random = new Random(seed);
        PatternBench bench = new PatternBench(
                driveDb -> 0.01 * Math.pow(10, (driveDb + 7) / 6) * (1 + 0.05 * random.nextGaussian()));
        ChannelReading channel = search(bench, 40).channels().get(0);
        assertEquals(EndPointOutcome.REACHED, channel.outcome());
        assertEquals(
                watts(-7, 0.01),
                channel.powerWatts(),
                0.1 * watts(-7, 0.01),
                bench.fedDb().toString());
    }

    @Test
    void startsSafelyAndGoesNoHigherThanItMust() throws Exception {
        PatternBench bench = new PatternBench(driveDb -> driveDb > -7 ? 0.05 : 0.001);
        search(bench, 40);
        assertEquals(-40, bench.fedDb().get(0));
        // 40 W lie at -6.99 dB: the first level there is beyond the step, and no level goes above it by more than 0.75
        // dB.
        assertTrue(
                bench.fedDb().stream().allMatch(driveDb -> driveDb <= -6.2),
                bench.fedDb().toString());
    }
}
