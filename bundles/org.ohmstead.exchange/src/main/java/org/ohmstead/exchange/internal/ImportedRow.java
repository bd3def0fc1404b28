// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.exchange.ImportSettings;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.text.Messages;

/**
 * What one row says.
 *
 * @param line where it stands
 * @param setting what it shares with the other channels of its reading
 * @param channel what the channel gave
 */
record ImportedRow(long line, Setting setting, ChannelReading channel) {
    private static final Messages TEXTS = Messages.of(ImportedRow.class);
    /** What the channels of a reading share. */
    record Setting(
            String entry,
            String entryHash,
            Instant takenAt,
            String step,
            Mode mode,
            String load,
            double nominalLoadOhms,
            Stimulus stimulus,
            EndPoint endPoint,
            Conditions conditions,
            String operator,
            String procedure,
            Optional<Specimen> specimen,
            String notes) {}

    private static final double USUAL_COVERAGE_FACTOR = 2;
    private static final String IMPORTED_STEP = "imported";

    /** Reads a row; empty when something is wrong with it, which is then among the faults. */
    static Optional<ImportedRow> read(RawRow row, RowReader in, ImportSettings settings) {
        Optional<Instant> takenAt = in.takenAt();
        Optional<Mode> mode = in.word(Field.MODE, Mode.values(), Optional.empty());
        OptionalDouble nominal = in.positive(Field.NOMINAL_LOAD, false);
        OptionalDouble ohms = in.positive(Field.LOAD_OHMS, nominal.isEmpty());
        Optional<Stimulus> stimulus = stimulus(in);
        Optional<EndPoint> endPoint = endPoint(in);
        Conditions conditions = new Conditions(in.number(Field.AMBIENT), in.number(Field.CASE));
        boolean loads = nominal.isPresent() || ohms.isPresent();
        if (takenAt.isEmpty() || mode.isEmpty() || !loads || stimulus.isEmpty() || endPoint.isEmpty()) {
            return Optional.empty();
        }
        double loadOhms = ohms.orElse(nominal.orElse(Double.NaN));
        double nominalOhms = nominal.orElse(loadOhms);
        Optional<ChannelReading> channel =
                channel(in, settings, loadOhms, stimulus.get().frequencyHz(), mode.get());
        Setting setting = new Setting(
                in.text(Field.ENTRY),
                in.text(Field.ENTRY_HASH),
                takenAt.get(),
                in.text(Field.STEP, IMPORTED_STEP),
                mode.get(),
                in.text(Field.LOAD, QuantityFormat.LOCALE_FREE.format(nominalOhms) + "ohm"),
                nominalOhms,
                stimulus.get(),
                endPoint.get(),
                conditions,
                in.text(Field.OPERATOR, settings.operator()),
                in.text(Field.PROCEDURE),
                specimen(in, settings),
                in.text(Field.NOTES));
        return channel.map(given -> new ImportedRow(row.line(), setting, given));
    }

    private static Optional<Specimen> specimen(RowReader in, ImportSettings settings) {
        String amplifier = in.text(
                Field.AMPLIFIER, settings.specimen().map(Specimen::amplifier).orElse(""));
        if (amplifier.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Specimen(
                amplifier,
                in.text(
                        Field.SERIAL_NUMBER,
                        settings.specimen().map(Specimen::serialNumber).orElse("")),
                in.text(Field.BENCH, settings.specimen().map(Specimen::bench).orElse(""))));
    }

    private static Optional<Stimulus> stimulus(RowReader in) {
        OptionalDouble frequency = in.positive(Field.FREQUENCY, true);
        Optional<PowerKind> kind = in.word(Field.STIMULUS, PowerKind.values(), Optional.of(PowerKind.CONTINUOUS));
        if (frequency.isEmpty() || kind.isEmpty()) {
            return Optional.empty();
        }
        if (kind.get() == PowerKind.CONTINUOUS) {
            return Optional.of(new Stimulus.ContinuousSine(frequency.getAsDouble()));
        }
        OptionalDouble on = in.positive(Field.BURST_ON, true);
        OptionalDouble period = in.positive(Field.BURST_PERIOD, true);
        OptionalDouble low = in.needed(Field.BURST_LOW_LEVEL);
        if (on.isEmpty() || period.isEmpty() || low.isEmpty()) {
            return Optional.empty();
        }
        if (period.getAsDouble() <= on.getAsDouble()) {
            in.fault(Field.BURST_PERIOD, TEXTS.text("row.burstPeriod"));
            return Optional.empty();
        }
        if (low.getAsDouble() < -200 || low.getAsDouble() > 0) {
            in.fault(Field.BURST_LOW_LEVEL, TEXTS.text("row.burstLow"));
            return Optional.empty();
        }
        return Optional.of(new Stimulus.ToneBurst(
                frequency.getAsDouble(), on.getAsDouble(), period.getAsDouble(), low.getAsDouble()));
    }

    /** The words that stand for an end point in a table. */
    private enum EndPointWord {
        THD_F,
        THD_R,
        THD_PLUS_NOISE_R,
        CLIPPING_ONSET,
        FIXED_LEVEL
    }

    private static Optional<EndPoint> endPoint(RowReader in) {
        Optional<EndPointWord> word = in.word(Field.END_POINT, EndPointWord.values(), Optional.empty());
        if (word.isEmpty()) {
            return Optional.empty();
        }
        return switch (word.get()) {
            case CLIPPING_ONSET -> Optional.of(new EndPoint.ClippingOnset());
            case FIXED_LEVEL -> {
                OptionalDouble drive = in.needed(Field.END_POINT_DRIVE);
                yield drive.isPresent() ? Optional.of(new EndPoint.FixedLevel(drive.getAsDouble())) : Optional.empty();
            }
            default -> distortion(in, DistortionMeasure.valueOf(word.get().name()));
        };
    }

    private static Optional<EndPoint> distortion(RowReader in, DistortionMeasure measure) {
        OptionalDouble limit = in.positive(Field.END_POINT_LIMIT, true);
        if (limit.isEmpty()) {
            return Optional.empty();
        }
        if (limit.getAsDouble() > 1 || limit.getAsDouble() < Double.MIN_NORMAL) {
            in.fault(Field.END_POINT_LIMIT, TEXTS.text("row.limit"));
            return Optional.empty();
        }
        return Optional.of(new EndPoint.DistortionLimit(limit.getAsDouble(), measure));
    }

    private static Optional<ChannelReading> channel(
            RowReader in, ImportSettings settings, double loadOhms, double frequencyHz, Mode mode) {
        OptionalDouble power = in.notNegative(Field.POWER, true);
        OptionalDouble uncertainty =
                power.isPresent() ? uncertainty(in, settings, power.getAsDouble()) : OptionalDouble.empty();
        OptionalDouble supply = in.positive(Field.SUPPLY_VOLTS, true);
        OptionalDouble output = in.notNegative(Field.OUTPUT, false);
        OptionalDouble thd = in.notNegative(Field.THD_F, true);
        OptionalDouble amps = in.number(Field.SUPPLY_AMPS);
        Optional<EndPointOutcome> outcome =
                in.word(Field.OUTCOME, EndPointOutcome.values(), Optional.of(EndPointOutcome.REACHED));
        if (uncertainty.isEmpty() || supply.isEmpty() || thd.isEmpty() || outcome.isEmpty()) {
            return Optional.empty();
        }
        // Where the volts are not given they follow from the power in the load: P = U^2 / R.
        double volts = output.orElse(Math.sqrt(power.getAsDouble() * loadOhms));
        if (!Double.isFinite(volts)) {
            in.faultTooLarge(Field.POWER);
            return Optional.empty();
        }
        return Optional.of(new ChannelReading(
                in.text(Field.CHANNEL, mode == Mode.BRIDGED ? "A+B" : "A"),
                outcome.get(),
                loadOhms,
                power.getAsDouble(),
                uncertainty.getAsDouble(),
                volts,
                frequencyHz,
                thd.getAsDouble(),
                supply.getAsDouble(),
                amps,
                List.of(new UncertaintyPart("as stated in the imported table", uncertainty.getAsDouble(), false)),
                List.of(),
                List.of()));
    }

    private static OptionalDouble uncertainty(RowReader in, ImportSettings settings, double powerWatts) {
        OptionalDouble standard = in.notNegative(Field.STANDARD_UNCERTAINTY, false);
        if (standard.isPresent()) {
            return standard;
        }
        OptionalDouble expanded = in.notNegative(Field.EXPANDED_UNCERTAINTY, false);
        if (expanded.isPresent()) {
            OptionalDouble factor = in.positive(Field.COVERAGE_FACTOR, false);
            double watts = expanded.getAsDouble() / factor.orElse(USUAL_COVERAGE_FACTOR);
            if (!Double.isFinite(watts)) {
                in.faultTooLarge(Field.EXPANDED_UNCERTAINTY);
                return OptionalDouble.empty();
            }
            return OptionalDouble.of(watts);
        }
        if (settings.standardUncertaintyRatio().isPresent()) {
            return OptionalDouble.of(settings.standardUncertaintyRatio().getAsDouble() * powerWatts);
        }
        in.fault(
                Field.STANDARD_UNCERTAINTY,
                TEXTS.text(
                        "row.uncertainty", Field.STANDARD_UNCERTAINTY.example(), Field.EXPANDED_UNCERTAINTY.example()));
        return OptionalDouble.empty();
    }

    /** Returns the notes of the reading, with where it comes from in front. */
    static List<String> notes(List<ImportedRow> rows, String fileName, String sha256) {
        Setting setting = rows.get(0).setting();
        List<String> notes = new ArrayList<>();
        String lines = rows.size() == 1
                ? "line " + rows.get(0).line()
                : "lines " + rows.get(0).line() + " to "
                        + rows.get(rows.size() - 1).line();
        notes.add("Imported from \"" + fileName + "\" (SHA-256 " + sha256 + "), " + lines + ".");
        if (!setting.entry().isEmpty() || !setting.procedure().isEmpty()) {
            notes.add("There it is entry \"" + setting.entry() + "\""
                    + (setting.entryHash().isEmpty() ? "" : " with the hash " + setting.entryHash())
                    + (setting.procedure().isEmpty() ? "" : ", found by " + setting.procedure()) + ".");
        }
        if (!setting.notes().isEmpty()) {
            notes.add(setting.notes());
        }
        return notes;
    }
}
