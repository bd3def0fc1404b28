// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Locale;
import java.util.Optional;

/**
 * What the limits of a model's points allow in air of one temperature. Every point that has a limit counts, and stays below it by the
 * margin; the answers name the point that binds. Immutable.
 *
 * <p>Temperatures are forecasts from a model: they are no reason to leave a bench alone. Watch it, and keep a thermometer on what may burn.
 */
public final class HeatLimits {
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
                    say(
                            "The %s is at %.1f °C already, at or above the %.1f °C that it may reach.",
                            name(binding),
                            airCelsius + model.riseKelvin(binding, state, watts),
                            allowedCelsius(binding)),
                    "Switch the power off, let it cool, and ask again.");
        }
        return new HeatAnswer.Bounded(
                least,
                say(
                        "After %s the %s reaches the %.1f °C that it may reach.",
                        Spans.say(least), name(binding), allowedCelsius(binding)));
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
                    ? say("The %s is at or below %.1f °C already.", name(point), celsius)
                    : say("After %s the %s is down to %.1f °C.", Spans.say(at.seconds()), name(point), celsius);
            return new HeatAnswer.Bounded(at.seconds(), sentence);
        }
        double settled = model.settledCelsius(point, watts, airCelsius);
        return new HeatAnswer.Impossible(
                say(
                        "The %s never gets down to %.1f °C; it settles at %.1f °C in air of %.1f °C.",
                        name(point), celsius, settled, airCelsius),
                "Wait for a higher temperature, switch off what still heats it, or cool the air or use a fan.");
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
                        say(
                                "The %s settles at %.1f °C by what is there anyway, above the %.1f °C that it may reach.",
                                name(point), airCelsius + other, allowedCelsius(point)),
                        "Lower what is on all the time, cool the air, use a fan, or a larger sink.");
            }
            if (rise > 0 && room / rise < least) {
                binding = point;
                least = Math.max(0, room / rise);
            }
        }
        if (binding < 0) {
            return new HeatAnswer.Unlimited("No point with a limit is warmed by this power, so nothing bounds it.");
        }
        return new HeatAnswer.Bounded(
                least,
                say(
                        "At %.4g times this power the %s settles at the %.1f °C that it may reach.",
                        least, name(binding), allowedCelsius(binding)));
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
                    say(
                            "Even at rest the %s settles at %.1f °C, above the %.1f °C that it may reach.",
                            name(resting),
                            model.settledCelsius(resting, restWatts, airCelsius),
                            allowedCelsius(resting)),
                    "Lower what is on at rest, cool the air, use a fan, or a larger sink.");
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
                    say(
                            "The %s passes its %.1f °C at once, however short the power is on.",
                            name(binding), allowedCelsius(binding)),
                    "Lower the power.");
        }
        return new HeatAnswer.Bounded(
                low,
                say(
                        "On for %.4g %% of each %s the %s just stays below the %.1f °C that it may reach.",
                        100 * low,
                        Spans.say(periodSeconds),
                        name(Math.max(0, binding)),
                        allowedCelsius(Math.max(0, binding))));
    }

    /** Returns why nothing can be done in this air, if it is as hot as a limit. */
    private Optional<HeatAnswer.Impossible> hotAir() {
        for (int point = 0; point < model.points().size(); point++) {
            if (roomKelvin(point) <= 0) {
                return Optional.of(new HeatAnswer.Impossible(
                        say(
                                "The air is at %.1f °C, and the %s may reach %.1f °C: no room for any power.",
                                airCelsius, name(point), allowedCelsius(point)),
                        marginKelvin > 0
                                ? "Cool the air, or check the limit and the margin."
                                : "Cool the air, or check the limit."));
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
        StringBuilder text = new StringBuilder("Unlimited:");
        for (int point = 0; point < model.points().size(); point++) {
            if (model.points().get(point).limitCelsius().isPresent()) {
                text.append(say(
                        "%s the %s settles at %.1f °C, within the %.1f °C that it may reach",
                        text.charAt(text.length() - 1) == ':' ? "" : ";",
                        name(point),
                        model.settledCelsius(point, watts, airCelsius),
                        allowedCelsius(point)));
            }
        }
        return text.charAt(text.length() - 1) == ':'
                ? "Unlimited: no point has a limit."
                : text.append('.').toString();
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

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
