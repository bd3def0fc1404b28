// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.units.text.Messages;

/**
 * What the limits of a model's points allow in air of one temperature. Every point that has a limit counts, and stays below it by the
 * margin; the answers name the point that binds. Immutable.
 *
 * <p>Temperatures are forecasts from a model: they are no reason to leave a bench alone. Watch it, and keep a thermometer on what may burn.
 */
public final class HeatLimits {
    private static final Messages TEXTS = Messages.of(HeatLimits.class);

    /** Closer than this to a limit counts as at the limit, in kelvins: far below what any model is good for. */
    private static final double AT_LIMIT_KELVIN = 1e-9;

    private static final int HALVINGS = 100;

    private final HeatModel model;
    private final double airCelsius;
    private final double marginKelvin;

    /**
     * Makes the limits.
     *
     * @param model what gets warm
     * @param airCelsius temperature of the air in degrees Celsius
     * @param marginKelvin how far below its limit every point is to stay, at least 0
     */
    public HeatLimits(HeatModel model, double airCelsius, double marginKelvin) {
        this.model = Checks.present(model, "model");
        this.airCelsius = Checks.finite(airCelsius, "airCelsius");
        this.marginKelvin = Checks.notNegative(marginKelvin, "marginKelvin");
    }

    /**
     * Returns for how many seconds powers may be on from a state until a point gets to its limit.
     *
     * @param state the modes at the start; not changed
     * @param watts power of each source in watts
     */
    public HeatAnswer onTime(double[] state, double[] watts) {
        Optional<HeatAnswer.Impossible> hotAir = hotAir();
        if (hotAir.isPresent()) {
            return hotAir.get();
        }
        int binding = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int point = 0; point < model.points().size(); point++) {
            double room = roomKelvin(point) + AT_LIMIT_KELVIN;
            if (room < Double.POSITIVE_INFINITY
                    && model.heatsTo(point, state, watts, room) instanceof ReachTime.At at
                    && at.seconds() < least) {
                binding = point;
                least = at.seconds();
            }
        }
        if (binding < 0) {
            return new HeatAnswer.Unlimited(settledSentence(watts));
        }
        if (least == 0) {
            return new HeatAnswer.Impossible(
                    TEXTS.text(
                            "limits.already",
                            name(binding),
                            SupplyFigures.tenth(airCelsius + model.riseKelvin(binding, state, watts)),
                            SupplyFigures.tenth(allowedCelsius(binding))),
                    TEXTS.text("limits.already.remedy"));
        }
        return new HeatAnswer.Bounded(
                least,
                TEXTS.text(
                        "limits.reaches",
                        Spans.say(least),
                        name(binding),
                        SupplyFigures.tenth(allowedCelsius(binding))));
    }

    /**
     * Returns after how many seconds a point has cooled to a temperature.
     *
     * @param point its number
     * @param state the modes at the start; not changed
     * @param watts power of each source while it cools, in watts
     * @param celsius what to wait for, in degrees Celsius
     */
    public HeatAnswer coolDown(int point, double[] state, double[] watts, double celsius) {
        Checks.finite(celsius, "celsius");
        ReachTime reach = model.coolsTo(point, state, watts, celsius - airCelsius);
        if (reach instanceof ReachTime.At at) {
            String sentence = at.seconds() == 0
                    ? TEXTS.text("limits.cool", name(point), SupplyFigures.tenth(celsius))
                    : TEXTS.text("limits.cools", Spans.say(at.seconds()), name(point), SupplyFigures.tenth(celsius));
            return new HeatAnswer.Bounded(at.seconds(), sentence);
        }
        double settled = model.settledCelsius(point, watts, airCelsius);
        return new HeatAnswer.Impossible(
                TEXTS.text(
                        "limits.neverCool",
                        name(point),
                        SupplyFigures.tenth(celsius),
                        SupplyFigures.tenth(settled),
                        SupplyFigures.tenth(airCelsius)),
                TEXTS.text("limits.neverCool.remedy"));
    }

    /**
     * Returns the power that may stay on for ever: how many times the given powers.
     *
     * @param watts power of each source in watts whose multiple is sought
     * @param otherWatts power of each source that is there anyway, in watts
     */
    public HeatAnswer continuousMultiple(double[] watts, double[] otherWatts) {
        Optional<HeatAnswer.Impossible> hotAir = hotAir();
        if (hotAir.isPresent()) {
            return hotAir.get();
        }
        int binding = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int point = 0; point < model.points().size(); point++) {
            double other = model.settledCelsius(point, otherWatts, 0);
            double rise = model.settledCelsius(point, watts, 0);
            double room = roomKelvin(point) - other;
            if (room < -AT_LIMIT_KELVIN) {
                return new HeatAnswer.Impossible(
                        TEXTS.text(
                                "limits.anyway",
                                name(point),
                                SupplyFigures.tenth(airCelsius + other),
                                SupplyFigures.tenth(allowedCelsius(point))),
                        TEXTS.text("limits.anyway.remedy"));
            }
            if (rise > 0 && room / rise < least) {
                binding = point;
                least = Math.max(0, room / rise);
            }
        }
        if (binding < 0) {
            return new HeatAnswer.Unlimited(TEXTS.text("limits.unbound"));
        }
        return new HeatAnswer.Bounded(
                least,
                TEXTS.text(
                        "limits.times",
                        SupplyFigures.format("%.4g", least),
                        name(binding),
                        SupplyFigures.tenth(allowedCelsius(binding))));
    }

    /**
     * Returns the part of a period, 0 to 1, for which powers may be on, when that goes on for ever, so that no point ever passes its limit.
     *
     * @param watts power of each source while on, in watts
     * @param restWatts power of each source while off, in watts
     * @param periodSeconds from one switching on to the next, above 0
     */
    public HeatAnswer duty(double[] watts, double[] restWatts, double periodSeconds) {
        Checks.positive(periodSeconds, "periodSeconds");
        Optional<HeatAnswer.Impossible> hotAir = hotAir();
        if (hotAir.isPresent()) {
            return hotAir.get();
        }
        if (tooHotSettled(watts) < 0) {
            return new HeatAnswer.Unlimited(settledSentence(watts));
        }
        int resting = tooHotSettled(restWatts);
        if (resting >= 0) {
            return new HeatAnswer.Impossible(
                    TEXTS.text(
                            "limits.atRest",
                            name(resting),
                            SupplyFigures.tenth(model.settledCelsius(resting, restWatts, airCelsius)),
                            SupplyFigures.tenth(allowedCelsius(resting))),
                    TEXTS.text("limits.atRest.remedy"));
        }
        double low = 0;
        double high = 1;
        for (int i = 0; i < HALVINGS && low < high; i++) {
            double middle = low + (high - low) / 2;
            if (middle > 0 && tooHot(watts, restWatts, periodSeconds, middle) < 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        int binding = tooHot(watts, restWatts, periodSeconds, high);
        if (low * periodSeconds < Double.MIN_NORMAL) {
            return new HeatAnswer.Impossible(
                    TEXTS.text("limits.atOnce", name(binding), SupplyFigures.tenth(allowedCelsius(binding))),
                    TEXTS.text("limits.atOnce.remedy"));
        }
        return new HeatAnswer.Bounded(
                low,
                TEXTS.text(
                        "limits.duty",
                        SupplyFigures.format("%.4g", 100 * low),
                        Spans.say(periodSeconds),
                        name(Math.max(0, binding)),
                        SupplyFigures.tenth(allowedCelsius(Math.max(0, binding)))));
    }

    /** Returns why nothing can be done in this air, if it is as hot as a limit. */
    private Optional<HeatAnswer.Impossible> hotAir() {
        for (int point = 0; point < model.points().size(); point++) {
            if (roomKelvin(point) <= 0) {
                return Optional.of(new HeatAnswer.Impossible(
                        TEXTS.text(
                                "limits.hotAir",
                                SupplyFigures.tenth(airCelsius),
                                name(point),
                                SupplyFigures.tenth(allowedCelsius(point))),
                        marginKelvin > 0
                                ? TEXTS.text("limits.hotAir.remedy.margin")
                                : TEXTS.text("limits.hotAir.remedy")));
            }
        }
        return Optional.empty();
    }

    private int tooHotSettled(double[] watts) {
        for (int point = 0; point < model.points().size(); point++) {
            if (model.settledCelsius(point, watts, 0) > roomKelvin(point) + AT_LIMIT_KELVIN) {
                return point;
            }
        }
        return -1;
    }

    private int tooHot(double[] watts, double[] restWatts, double periodSeconds, double duty) {
        double on = duty * periodSeconds;
        BurstTrain train = new BurstTrain(watts, on, restWatts, periodSeconds - on);
        for (int point = 0; point < model.points().size(); point++) {
            double room = roomKelvin(point);
            if (room < Double.POSITIVE_INFINITY
                    && train.settledPeak(model, point).riseKelvin() > room + AT_LIMIT_KELVIN) {
                return point;
            }
        }
        return -1;
    }

    private String settledSentence(double[] watts) {
        List<String> settled = new ArrayList<>();
        for (int point = 0; point < model.points().size(); point++) {
            if (model.points().get(point).limitCelsius().isPresent()) {
                settled.add(TEXTS.text(
                        "limits.settles",
                        name(point),
                        SupplyFigures.tenth(model.settledCelsius(point, watts, airCelsius)),
                        SupplyFigures.tenth(allowedCelsius(point))));
            }
        }
        return settled.isEmpty()
                ? TEXTS.text("limits.noLimit")
                : TEXTS.text("limits.unlimited", String.join("; ", settled));
    }

    /** Returns how much warmer than the air a point may be; infinite without a limit. */
    private double roomKelvin(int point) {
        return allowedCelsius(point) - airCelsius;
    }

    private double allowedCelsius(int point) {
        return model.points().get(point).limitCelsius().orElse(Double.POSITIVE_INFINITY) - marginKelvin;
    }

    private String name(int point) {
        return model.points().get(point).name();
    }
}
