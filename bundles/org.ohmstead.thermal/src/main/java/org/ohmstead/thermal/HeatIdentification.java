// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.ohmstead.units.text.Messages;

/**
 * Finds thermal resistance, heat capacity and the air's temperature from a logged warm-up or cool-down, with 95 % intervals, by nonlinear
 * least squares with one and with two time constants. The small-sample criterion of Akaike (AICc) says which; two must be clearly better.
 *
 * <p>The intervals suppose that the errors of the readings are independent of one another. Draughts and slow drifts of the air are not: then
 * the intervals are too narrow, which a remark says when the residuals show it.
 */
public final class HeatIdentification {
    private static final Messages TEXTS = Messages.of(HeatIdentification.class);
    private static final int FEWEST_READINGS = 10;
    /** A record must last this many of its slowest time constant, or resistance and time constant cannot be told apart. */
    private static final double LEAST_SPAN = 1.5;
    /** A difference of 4 to 7 leaves the worse model considerably less support (Burnham and Anderson); the simpler one is kept within. */
    private static final double CLEARLY_BETTER = 6;
    /** From here on one time constant is plainly wrong, even if the record cannot pin down two. */
    private static final double PLAINLY_BETTER = 20;

    private static final double LEAST_CHANGE_OVER_NOISE = 10;
    private static final double WIDEST_LOGARITHM = 0.5;
    private static final double TWO_DEVIATIONS = 2;

    private HeatIdentification() {}

    /** Returns what a record tells. */
    public static HeatFit identify(HeatRecord record) {
        Optional<HeatFit.Refused> useless = useless(record);
        if (useless.isPresent()) {
            return useless.get();
        }
        Optional<WarmingFit> one = WarmingFit.of(record, 1);
        Optional<WarmingFit> two = WarmingFit.of(record, 2);
        double span = span(record);
        if (two.isPresent()
                && (one.isEmpty() || two.get().aicc() < one.get().aicc() - CLEARLY_BETTER)
                && certain(two.get(), span)) {
            return found(record, two.get());
        }
        if (one.isEmpty()) {
            return new HeatFit.Refused(TEXTS.text("identify.noCurve"), TEXTS.text("identify.noCurve.remedy"));
        }
        Optional<HeatFit.Refused> doubtful = doubtful(record, one.get(), span);
        if (doubtful.isPresent()) {
            return doubtful.get();
        }
        if (two.isPresent() && two.get().aicc() < one.get().aicc() - PLAINLY_BETTER) {
            return new HeatFit.Refused(TEXTS.text("identify.notTwo"), TEXTS.text("identify.notTwo.remedy"));
        }
        return found(record, one.get());
    }

    private static Optional<HeatFit.Refused> useless(HeatRecord record) {
        List<HeatReading> readings = record.readings();
        if (readings.size() < FEWEST_READINGS) {
            return refused(
                    TEXTS.text("identify.few", Integer.toString(readings.size()), Integer.toString(FEWEST_READINGS)),
                    TEXTS.text("identify.few.remedy"));
        }
        for (int i = 1; i < readings.size(); i++) {
            if (readings.get(i).seconds() <= readings.get(i - 1).seconds()) {
                return refused(
                        TEXTS.text(
                                "identify.unsorted",
                                Integer.toString(i + 1),
                                SupplyFigures.format("%.6g", readings.get(i).seconds()),
                                SupplyFigures.format("%.6g", readings.get(i - 1).seconds())),
                        TEXTS.text("identify.unsorted.remedy"));
            }
        }
        boolean constant = record.powers().steps().stream()
                .allMatch(step ->
                        step.shared()[0] == record.powers().steps().get(0).shared()[0]);
        boolean heated = record.powers().steps().stream().anyMatch(step -> step.shared()[0] != 0);
        if (constant && heated && !record.startsCold() && record.airCelsius().isEmpty()) {
            return refused(TEXTS.text("identify.constant"), TEXTS.text("identify.constant.remedy"));
        }
        if (!heated && record.startsCold()) {
            return refused(TEXTS.text("identify.cold"), TEXTS.text("identify.cold.remedy"));
        }
        return Optional.empty();
    }

    private static Optional<HeatFit.Refused> doubtful(HeatRecord record, WarmingFit fit, double span) {
        double change = record.readings().stream()
                        .mapToDouble(HeatReading::celsius)
                        .max()
                        .orElse(0)
                - record.readings().stream()
                        .mapToDouble(HeatReading::celsius)
                        .min()
                        .orElse(0);
        if (change <= LEAST_CHANGE_OVER_NOISE * fit.noiseKelvin()) {
            return refused(
                    TEXTS.text(
                            "identify.small",
                            SupplyFigures.format("%.3g", change),
                            SupplyFigures.format("%.2g", fit.noiseKelvin())),
                    TEXTS.text("identify.small.remedy"));
        }
        double slowest = fit.slowestTauSeconds();
        if (span < LEAST_SPAN * slowest) {
            return refused(
                    TEXTS.text(
                            "identify.short",
                            Spans.say(span),
                            SupplyFigures.format("%.2g", span / slowest),
                            Spans.say(slowest)),
                    TEXTS.text(
                            "identify.short.remedy",
                            Spans.say(LEAST_SPAN * slowest),
                            Spans.say(2 * LEAST_SPAN * slowest)));
        }
        double spacing = span / (record.readings().size() - 1);
        if (slowest < spacing) {
            return refused(
                    TEXTS.text("identify.sparse", Spans.say(spacing), Spans.say(slowest)),
                    TEXTS.text("identify.sparse.remedy", Spans.say(slowest / 4)));
        }
        if (!fit.certain(WIDEST_LOGARITHM)) {
            return refused(TEXTS.text("identify.many"), TEXTS.text("identify.many.remedy"));
        }
        return Optional.empty();
    }

    private static boolean certain(WarmingFit fit, double span) {
        return fit.certain(WIDEST_LOGARITHM) && span >= LEAST_SPAN * fit.slowestTauSeconds();
    }

    private static HeatFit.Found found(HeatRecord record, WarmingFit fit) {
        double[] fitted = fit.celsius();
        List<HeatFit.Residual> residuals = new ArrayList<>();
        for (int i = 0; i < fitted.length; i++) {
            HeatReading reading = record.readings().get(i);
            residuals.add(new HeatFit.Residual(reading.seconds(), reading.celsius(), fitted[i]));
        }
        List<String> remarks = new ArrayList<>();
        double together = together(residuals);
        if (together > TWO_DEVIATIONS / Math.sqrt(residuals.size())) {
            remarks.add(TEXTS.text("identify.together", SupplyFigures.format("%.2f", together)));
        }
        if (fit.kelvinPerWatt().isEmpty()) {
            remarks.add(TEXTS.text("identify.coolDown"));
        }
        if (record.startsCold()) {
            remarks.add(TEXTS.text("identify.startsCold"));
        }
        return new HeatFit.Found(
                fit.stages(), fit.kelvinPerWatt(), fit.airCelsius(), fit.noiseKelvin(), residuals, remarks);
    }

    /** Returns the correlation of residuals with the ones after them. */
    private static double together(List<HeatFit.Residual> residuals) {
        double[] kelvin =
                residuals.stream().mapToDouble(HeatFit.Residual::kelvin).toArray();
        double squares = Arrays.stream(kelvin).map(value -> value * value).sum();
        double products = 0;
        for (int i = 1; i < kelvin.length; i++) {
            products += kelvin[i] * kelvin[i - 1];
        }
        return squares > 0 ? products / squares : 0;
    }

    private static double span(HeatRecord record) {
        List<HeatReading> readings = record.readings();
        double from = record.startsCold() ? 0 : readings.get(0).seconds();
        return readings.get(readings.size() - 1).seconds() - from;
    }

    private static Optional<HeatFit.Refused> refused(String reason, String remedy) {
        return Optional.of(new HeatFit.Refused(reason, remedy));
    }
}
