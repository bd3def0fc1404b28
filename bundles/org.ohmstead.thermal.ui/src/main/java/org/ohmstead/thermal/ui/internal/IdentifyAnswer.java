// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.FittedFigure;
import org.ohmstead.thermal.HeatFit;
import org.ohmstead.thermal.HeatIdentification;
import org.ohmstead.thermal.HeatReading;
import org.ohmstead.thermal.HeatRecord;
import org.ohmstead.thermal.PowerProfile;
import org.ohmstead.units.text.Messages;

/**
 * What a logged warm-up or cool-down tells of an amplifier.
 *
 * @param readings what was logged
 * @param heatInRecord whether the record tells the heat
 * @param fit what came of it
 */
record IdentifyAnswer(List<HeatReading> readings, boolean heatInRecord, HeatFit fit) {
    private static final Messages TEXTS = Messages.of(IdentifyAnswer.class);
    private static final int DIGITS = 3;

    IdentifyAnswer {
        readings = List.copyOf(readings);
    }

    /**
     * Fits a record. Not for the thread of the user interface.
     *
     * @param log the readings, perhaps with their heat
     * @param heatWatts constant heat, where the log has none; empty for a cool-down
     * @param startsCold whether everything had the air's temperature at the start
     * @param airCelsius temperature of the air, when it was measured
     */
    static IdentifyAnswer of(
            LoggedWarmth log, OptionalDouble heatWatts, boolean startsCold, OptionalDouble airCelsius) {
        PowerProfile powers = log.powers().orElseGet(() -> PowerProfile.constant(heatWatts.orElse(0)));
        boolean heated = powers.steps().stream().anyMatch(step -> step.watts()[0] > 0);
        HeatRecord record = new HeatRecord(log.readings(), powers, heated && startsCold, airCelsius);
        return new IdentifyAnswer(log.readings(), log.powers().isPresent(), HeatIdentification.identify(record));
    }

    Optional<HeatFit.Found> found() {
        return fit instanceof HeatFit.Found found ? Optional.of(found) : Optional.empty();
    }

    /** Returns the lines of the table. */
    List<FigureRow> rows() {
        List<FigureRow> rows = new ArrayList<>();
        found().ifPresent(found -> {
            rows.add(found.kelvinPerWatt()
                    .map(figure -> row(TEXTS.text("identify.toAir"), figure, "K/W"))
                    .orElseGet(
                            () -> FigureRow.unknown(TEXTS.text("identify.toAir"), TEXTS.text("identify.unknownHeat"))));
            boolean several = found.stages().size() > 1;
            for (int i = 0; i < found.stages().size(); i++) {
                HeatFit.Stage stage = found.stages().get(i);
                String which = several ? i == 0 ? ".fast" : ".slow" : "";
                rows.add(row(TEXTS.text("identify.tau" + which), stage.tauSeconds(), "s"));
                stage.joulesPerKelvin()
                        .ifPresent(figure -> rows.add(row(TEXTS.text("identify.capacity" + which), figure, "J/K")));
            }
            rows.add(found.airCelsius()
                    .map(figure -> row(TEXTS.text("identify.air"), figure, "\u00b0C"))
                    .orElseGet(() ->
                            FigureRow.of(TEXTS.text("identify.air"), TEXTS.text("identify.airEntered"), "", "", "")));
            rows.add(FigureRow.of(TEXTS.text("identify.scatter"), HeatWords.figure(found.noiseKelvin()), "K", "", ""));
        });
        return rows;
    }

    private static FigureRow row(String name, FittedFigure figure, String unit) {
        return FigureRow.of(
                name,
                HeatWords.figure(figure.value()),
                unit,
                HeatWords.figure(figure.interval().lower()) + " \u2013 "
                        + HeatWords.figure(figure.interval().upper()),
                "");
    }

    /** Returns the resistance from case to air as the project takes it: its 95 % interval; empty without one. */
    Optional<Range> kelvinPerWatt() {
        return found().flatMap(HeatFit.Found::kelvinPerWatt)
                .map(figure ->
                        outward(figure.interval().lower(), figure.interval().upper()));
    }

    /**
     * Returns the heat capacity of the case as the project takes it. Its case is one body: of two time constants the slow one is kept, with
     * the whole resistance.
     */
    Optional<Range> joulesPerKelvin() {
        Optional<FittedFigure> whole = found().flatMap(HeatFit.Found::kelvinPerWatt);
        if (whole.isEmpty()) {
            return Optional.empty();
        }
        List<HeatFit.Stage> stages = found().orElseThrow().stages();
        HeatFit.Stage slow = stages.get(stages.size() - 1);
        if (stages.size() == 1 && slow.joulesPerKelvin().isPresent()) {
            FittedFigure figure = slow.joulesPerKelvin().get();
            return Optional.of(
                    outward(figure.interval().lower(), figure.interval().upper()));
        }
        double kelvinPerWatt = whole.get().value();
        return Optional.of(outward(
                slow.tauSeconds().interval().lower() / kelvinPerWatt,
                slow.tauSeconds().interval().upper() / kelvinPerWatt));
    }

    private static Range outward(double low, double high) {
        return new Range(
                new BigDecimal(low, new MathContext(DIGITS, RoundingMode.FLOOR)).doubleValue(),
                new BigDecimal(high, new MathContext(DIGITS, RoundingMode.CEILING)).doubleValue());
    }

    /** Returns why the figures cannot go into a project; empty when they can. */
    Optional<String> whyNot() {
        if (fit instanceof HeatFit.Refused) {
            return Optional.of(TEXTS.text("identify.noFit"));
        }
        return kelvinPerWatt().isEmpty() ? Optional.of(TEXTS.text("identify.unknownHeat")) : Optional.empty();
    }

    /** Returns an amplifier's data with what was found. */
    AmplifierHeat into(AmplifierHeat amplifier) {
        return amplifier.withCaseKelvinPerWatt(kelvinPerWatt()).withCaseJoulesPerKelvin(joulesPerKelvin());
    }
}
