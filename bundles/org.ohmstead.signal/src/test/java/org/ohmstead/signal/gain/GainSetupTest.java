// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GainSetupTest {
    private static final GainTarget HUNDRED_IN_FOUR = new GainTarget(100, 4, false);
    private static final double EXACT = 1e-9;
    /** Half of the last digit that is printed. */
    private static final double ROUNDED = 5e-5;

    @ParameterizedTest
    @CsvSource({
        // Closed form: 20 log10(sqrt(P R) / V_in).
        "100, 4, 2, 20",
        "500, 2, 4, 17.9588",
        "75, 4, 0.2, 38.7506"
    })
    void theGainIsOutputOverInput(double watts, double ohms, double inputVoltsRms, double gainDb) {
        GainSetup setup = GainSetup.withOverlap(inputVoltsRms, 0, new GainTarget(watts, ohms, false));
        assertEquals(gainDb, setup.gainDb(), ROUNDED);
        assertEquals(inputVoltsRms, setup.sensitivityVoltsRms(), EXACT);
        assertEquals(Math.sqrt(watts * ohms) / inputVoltsRms, setup.gainRatio(), EXACT);
    }

    @Test
    void theOverlapLowersTheSensitivity() {
        // Closed form: 5 V x 10^(-10 / 20) = 1.581139 V at -10 dBFS; the gain is 20 log10(20 / 1.581139).
        GainSetup setup = GainSetup.withOverlap(5, 10, HUNDRED_IN_FOUR);
        assertEquals(1.581139, setup.sensitivityVoltsRms(), 5e-7);
        assertEquals(-10, setup.endPointDbfs(), EXACT);
        assertEquals(22.0412, setup.gainDb(), ROUNDED);
        assertEquals(10, setup.sourceHeadroomDb(), EXACT);
        assertEquals(0, setup.amplifierHeadroomDb(), EXACT);
        assertTrue(setup.endPointReached());
    }

    @Test
    void aGainLeadsBackToItsOverlap() {
        GainSetup setup = GainSetup.withOverlap(5, 7.3, HUNDRED_IN_FOUR);
        assertEquals(7.3, GainSetup.withGain(5, setup.gainDb(), HUNDRED_IN_FOUR).overlapDb(), EXACT);
        // 3 dB more gain: 3 dB more overlap, sensitivity lower by the same.
        GainSetup more = setup.atGain(setup.gainDb() + 3);
        assertEquals(10.3, more.overlapDb(), EXACT);
        assertEquals(Math.pow(10, -3 / 20.0), more.sensitivityVoltsRms() / setup.sensitivityVoltsRms(), EXACT);
    }

    @Test
    void bridgedTheChannelsNeedHalfTheGain() {
        // Closed form: 400 W in 4 ohm are 40 V, of which each channel gives half: 6.0206 dB less gain.
        GainSetup setup = GainSetup.withOverlap(2, 0, new GainTarget(400, 4, true));
        assertEquals(26.0206, setup.gainDb(), ROUNDED);
        assertEquals(20, setup.channelGainDb(), EXACT);
        GainSetup single = GainSetup.withOverlap(2, 0, HUNDRED_IN_FOUR);
        assertEquals(single.gainDb(), single.channelGainDb(), EXACT);
    }

    @Test
    void fullScaleAsksForTheOverlapMore() {
        // Closed form: 10 dB are 3.162278 in volts and 10 in power; the clipped sine's power at 10 dB is 1.728803.
        FullScaleDemand demand = GainSetup.withOverlap(5, 10, HUNDRED_IN_FOUR).fullScaleDemand();
        assertEquals(63.245553, demand.voltsRms(), 5e-7);
        assertEquals(1000, demand.powerWatts(), 1e-9);
        assertEquals(10, demand.beyondEndPointDb(), EXACT);
        assertEquals(10, demand.beyondClipDb(), EXACT);
        assertEquals(172.8803, demand.clippedPowerWatts(), ROUNDED);
        assertEquals(0.321637, demand.clipped().orElseThrow().thdFRatio(), 5e-7);
    }

    @Test
    void anAmplifierWithHeadroomClipsLater() {
        // 125.8925 W are 1 dB above 100 W.
        GainSetup setup = GainSetup.withOverlap(5, 10, HUNDRED_IN_FOUR).withClipWatts(OptionalDouble.of(125.892541));
        assertEquals(1, setup.amplifierHeadroomDb(), 1e-6);
        assertEquals(9, setup.fullScaleDemand().beyondClipDb(), 1e-6);
        assertEquals(1000, setup.fullScaleDemand().powerWatts(), EXACT);
        GainSetup wide = setup.withClipWatts(OptionalDouble.of(2000));
        assertTrue(wide.fullScaleDemand().clipped().isEmpty());
        assertEquals(1000, wide.fullScaleDemand().clippedPowerWatts(), EXACT);
        assertEquals(-3.010300, wide.fullScaleDemand().beyondClipDb(), 5e-7);
    }

    @Test
    void aWeakSourceDoesNotReachTheEndPoint() {
        GainSetup setup = GainSetup.withOverlap(1, -3, HUNDRED_IN_FOUR);
        assertFalse(setup.endPointReached());
        assertEquals(3, setup.endPointDbfs(), EXACT);
        assertEquals(100 * Math.pow(10, -0.3), setup.fullScaleDemand().powerWatts(), EXACT);
        assertTrue(setup.fullScaleDemand().clipped().isEmpty());
        assertFalse(setup.checkAt(-2).playable());
        assertTrue(setup.checkAt(-3).playable());
    }

    @Test
    void theSetUpIsDoneFarBelowTheEndPoint() {
        // Closed form: -20 dB are a tenth of the volts and a hundredth of the power.
        MeterCheck check = GainSetup.withOverlap(5, 10, HUNDRED_IN_FOUR).checkAt(-20);
        assertEquals(-30, check.sourceLevelDbfs(), EXACT);
        assertEquals(0.1581139, check.sourceVoltsRms(), 5e-8);
        assertEquals(2, check.outputVoltsRms(), EXACT);
        assertEquals(1, check.powerWatts(), EXACT);
        assertEquals(0, check.gainChangeDb(2), EXACT);
        // The meter reads 1 dB too much: turn down by 1 dB.
        assertEquals(-1, check.gainChangeDb(2 * Math.pow(10, 0.05)), EXACT);
        assertThrows(IllegalArgumentException.class, () -> check.gainChangeDb(0));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, -201, Double.NaN})
    void refusesACheckAboveTheEndPoint(double relativeDb) {
        GainSetup setup = GainSetup.withOverlap(5, 10, HUNDRED_IN_FOUR);
        assertThrows(IllegalArgumentException.class, () -> setup.checkAt(relativeDb));
    }

    @ParameterizedTest
    @CsvSource({"0, 10", "-5, 10", "NaN, 10", "5, 101", "5, NaN", "5, -101"})
    void refusesValuesThatCannotBe(double fullScaleVoltsRms, double overlapDb) {
        assertThrows(
                IllegalArgumentException.class,
                () -> GainSetup.withOverlap(fullScaleVoltsRms, overlapDb, HUNDRED_IN_FOUR));
    }

    @Test
    void refusesAClipPowerOfNothing() {
        GainSetup setup = GainSetup.withOverlap(5, 10, HUNDRED_IN_FOUR);
        assertThrows(IllegalArgumentException.class, () -> setup.withClipWatts(OptionalDouble.of(0)));
    }
}
