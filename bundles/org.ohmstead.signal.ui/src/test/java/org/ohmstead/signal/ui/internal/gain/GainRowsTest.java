// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.standard.LoggedGain;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.gain.GainTarget;
import org.ohmstead.units.text.Messages;

class GainRowsTest {
    private static final Messages ENGLISH = Messages.of(GainRows.class, Locale.ENGLISH);
    private static final GainInputs HUNDRED_WATTS =
            new GainInputs(5, 10, new GainTarget(100, 4, false), OptionalDouble.empty(), -20);

    private static GainRow row(List<GainRow> rows, String name) {
        return rows.stream().filter(row -> row.name().equals(name)).findFirst().orElseThrow();
    }

    private static String figure(List<GainRow> rows, String name) {
        GainRow row = row(rows, name);
        return row.value() + " " + row.unit();
    }

    @Test
    void everyFigureOfTheSetUpIsThereWithItsUnit() {
        List<GainRow> rows = GainRows.of(HUNDRED_WATTS, Optional.empty(), ENGLISH);
        // Closed form: 20 V at the load, 5 V x 10^(-10/20) at the input; 20 log10 of their ratio; ten times the power
        // at full scale.
        assertEquals("22.04 dB", figure(rows, "Gain, input to load"));
        assertEquals("12.65 V/V", figure(rows, "the same as a factor"));
        assertEquals("1.581 V", figure(rows, "Sensitivity, RMS"));
        assertEquals("6.20 dBu", figure(rows, "the same in dBu"));
        assertEquals("3.98 dBV", figure(rows, "the same in dBV"));
        assertEquals("-30.00 dBFS", figure(rows, "Play a sine at"));
        assertEquals("2.000 V", figure(rows, "Meter at the load, RMS"));
        assertEquals("20.00 V", figure(rows, "Output, RMS"));
        assertEquals("28.28 V", figure(rows, "Output, peak"));
        assertEquals("5.000 A", figure(rows, "Current, RMS"));
        assertEquals("10.00 dB", figure(rows, "Left in the source"));
        assertEquals("0.00 dB", figure(rows, "Left in the amplifier"));
        assertEquals("1000 W", figure(rows, "Power if nothing clipped"));
        assertEquals("+10.00 dB", figure(rows, "Beyond clipping"));
        assertEquals("172.9 W", figure(rows, "Power of the clipped wave"));
        assertTrue(rows.stream().noneMatch(row -> row.name().startsWith("Gain now")));
    }

    @Test
    void bridgedTheChannelsHaveLinesOfTheirOwn() {
        GainInputs bridged = new GainInputs(2, 0, new GainTarget(400, 4, true), OptionalDouble.empty(), -20);
        List<GainRow> rows = GainRows.of(bridged, Optional.empty(), ENGLISH);
        assertEquals("20.00 dB", figure(rows, "Gain of each channel"));
        assertEquals("2.000 \u03a9", figure(rows, "Each channel sees"));
        assertEquals("200.0 W", figure(rows, "Each channel gives"));
        assertEquals("20.00 V", figure(rows, "Each channel gives, RMS"));
        assertTrue(GainRows.of(HUNDRED_WATTS, Optional.empty(), ENGLISH).stream()
                .noneMatch(row -> row.name().startsWith("Each channel")));
    }

    @Test
    void whatClipsIsMarked() {
        List<GainRow> rows = GainRows.of(HUNDRED_WATTS, Optional.empty(), ENGLISH);
        assertEquals(GainRow.Kind.CAUTION, row(rows, "Beyond clipping").kind());
        GainInputs roomy = new GainInputs(5, 3, HUNDRED_WATTS.target(), OptionalDouble.of(400), -20);
        List<GainRow> clean = GainRows.of(roomy, Optional.empty(), ENGLISH);
        // Closed form: 400 W over 100 W are 6.02 dB, of which full scale uses 3.
        assertEquals("-3.02 dB", figure(clean, "Beyond clipping"));
        assertEquals("6.02 dB", figure(clean, "Left in the amplifier"));
        assertTrue(clean.stream().noneMatch(row -> row.kind() == GainRow.Kind.CAUTION));
    }

    @Test
    void thePresentGainSaysItsUncertaintyAndTheChangeToMake() {
        LoggedGain gain = new LoggedGain(
                "stereo",
                Mode.STEREO,
                Instant.EPOCH,
                false,
                List.of(
                        new LoggedGain.Channel("A", 26.04, OptionalDouble.of(0.02), 8, OptionalDouble.of(0.998)),
                        new LoggedGain.Channel("B", 25.9, OptionalDouble.empty(), 1, OptionalDouble.empty())));
        List<GainRow> rows = GainRows.of(HUNDRED_WATTS, Optional.of(new LogFacts.Found<>("R0007", gain)), ENGLISH);
        row(rows, "Gain now, by R0007");
        assertEquals("26.04 dB", figure(rows, "Channel A"));
        String meaning = row(rows, "Channel A").meaning();
        assertTrue(meaning.contains("out of 8 clean levels"), meaning);
        assertTrue(meaning.contains("26.040\u00a0\u00b1\u00a00.040 dB (k = 2, 95 %)"), meaning);
        assertTrue(meaning.contains("rises 0.998 dB for each dB"), meaning);
        assertTrue(row(rows, "Channel B").meaning().contains("not known"));
        // 26.04 dB instead of 22.04 dB: 4 dB more overlap, to be turned down.
        assertEquals("14.00 dB", figure(rows, "Overlap with it"));
        assertEquals("-4.00 dB", figure(rows, "Change to make"));
    }

    @Test
    void nothingIsWrittenAsMinusNothing() {
        assertEquals("0.00", GainRows.db(-0.001));
        assertEquals("0.00", GainRows.signed(-0.001));
        assertEquals("+0.01", GainRows.signed(0.01));
        assertEquals("-0.01", GainRows.db(-0.01));
    }

    @Test
    void whatTheViewKeepsReadsBackAsItWas() {
        Kept kept = new Kept(4.2, -3.5);
        assertEquals(Optional.of(kept), Kept.of(kept.text()));
        for (String broken : new String[] {null, "", "4", "a b", "0 10", "4 90", "NaN 3", "4 10 2"}) {
            assertFalse(Kept.of(broken).isPresent(), broken);
        }
    }
}
