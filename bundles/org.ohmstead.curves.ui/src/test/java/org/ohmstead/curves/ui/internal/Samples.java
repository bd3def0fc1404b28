// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SupplyType;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.workbench.session.WorkProgress;

/** Readings of an output stage whose power is known in closed form. */
final class Samples {
    static final EndPoint ONE_PERCENT = new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F);
    static final EndPoint ONSET = new EndPoint.ClippingOnset();
    static final WorkProgress GOING_ON = new WorkProgress() {
        @Override
        public void step(int done, int total, String what) {
            // Nobody looks.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    static final SheetSettings SETTINGS = new SheetSettings("", "", 0.95, "");

    private Samples() {}

    /** Closed form: V_peak = 2.2 V - 2 into whatever load, P = V_peak^2 / 2R. */
    static double watts(double supplyVolts, double loadOhms) {
        double peak = 2.2 * supplyVolts - 2;
        return peak * peak / (2 * loadOhms);
    }

    /** Two channels, B with 1 % less power. */
    static Reading stereo(double loadOhms, EndPoint endPoint, double supplyVolts) {
        double watts = watts(supplyVolts, loadOhms);
        return reading(
                Mode.STEREO,
                loadOhms,
                endPoint,
                List.of(channel("A", loadOhms, supplyVolts, watts), channel("B", loadOhms, supplyVolts, 0.99 * watts)));
    }

    /** One load across both channels, four times the power. */
    static Reading bridged(double loadOhms, double supplyVolts) {
        return reading(
                Mode.BRIDGED,
                loadOhms,
                ONE_PERCENT,
                List.of(channel("A+B", loadOhms, supplyVolts, 4 * watts(supplyVolts, loadOhms))));
    }

    static Reading reading(Mode mode, double loadOhms, EndPoint endPoint, List<ChannelReading> channels) {
        return new Reading(
                "s",
                mode,
                "l",
                loadOhms,
                new Stimulus.ContinuousSine(1000),
                endPoint,
                Instant.parse("2026-03-02T09:00:00Z"),
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                channels,
                new Provenance("0", "p", "1", "1", "N. N.", List.of(), List.of()),
                List.of());
    }

    static ChannelReading channel(String name, double loadOhms, double supplyVolts, double watts) {
        return new ChannelReading(
                name,
                EndPointOutcome.REACHED,
                loadOhms,
                watts,
                0.005 * watts,
                Math.sqrt(watts * loadOhms),
                1000,
                0.01,
                supplyVolts,
                OptionalDouble.empty(),
                List.of(new UncertaintyPart("output volts (meter)", 0.005 * watts, true)),
                List.of(),
                List.of());
    }

    /** Stereo into 4 and 2 ohm at 11.5, 12.5, 13.5 and 14.4 V, clipping onset into 4 ohm, bridged into 4 ohm. */
    static List<Reading> many() {
        List<Reading> readings = new ArrayList<>();
        for (double volts : new double[] {11.5, 12.5, 13.5, 14.4}) {
            readings.add(stereo(4, ONE_PERCENT, volts));
            readings.add(stereo(2, ONE_PERCENT, volts));
        }
        for (double volts : new double[] {11.5, 13.5}) {
            readings.add(stereo(4, ONSET, volts));
            readings.add(bridged(4, volts));
        }
        return readings;
    }

    static List<LogEntry> entries(List<Reading> readings) {
        List<LogEntry> entries = new ArrayList<>();
        for (Reading reading : readings) {
            entries.add(entry(entries.size() + 1, reading, Optional.empty()));
        }
        return entries;
    }

    static LogEntry voided(int sequence, Reading reading) {
        return entry(
                sequence,
                reading,
                Optional.of(new VoidNote("V0099", "R", "loose", "N. N.", Instant.parse("2026-03-02T10:00:00Z"))));
    }

    private static LogEntry entry(int sequence, Reading reading, Optional<VoidNote> voidedBy) {
        return new LogEntry(
                sequence,
                EntryKind.READING,
                String.format("R%04d", sequence),
                reading.takenAt(),
                "{}",
                "",
                "" + sequence,
                Optional.of(reading),
                Optional.empty(),
                Optional.empty(),
                voidedBy);
    }

    static Rating rating(String id, Mode mode, double loadOhms, double powerWatts, double supplyVolts) {
        return new Rating(id, PowerKind.CONTINUOUS, mode, loadOhms, powerWatts, supplyVolts, 0.01, 1000, "");
    }

    static Amplifier amplifier(Rating... ratings) {
        return new Amplifier(
                "", "M", "", 2, SupplyType.UNKNOWN, List.of(), List.of(), OptionalDouble.empty(), List.of(ratings), "");
    }

    static PowerCurves study(Rating... ratings) {
        return PowerCurves.of(entries(many()), amplifier(ratings), SETTINGS, List.of(), GOING_ON);
    }
}
