// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.model.Range;
import org.ohmstead.model.SinkSize;
import org.ohmstead.units.text.Messages;

/**
 * The thermal resistance of a sink from its size, at one power: the temperature at which still air and radiation carry off that power. Since
 * air moves faster along a hotter surface, the resistance falls with the power. It is an estimate; a logged warm-up does better.
 *
 * @param kelvinPerWatt with the 10 % (plate) or 20 % (fins) by which such formulas are off, and the range of a fan
 * @param riseKelvin of the sink above the air
 * @param convectionWatts carried off by the air, without a fan
 * @param radiationWatts radiated, without a fan
 * @param remarks what was assumed, in whole sentences
 */
public record SinkEstimate(
        Range kelvinPerWatt, Range riseKelvin, double convectionWatts, double radiationWatts, List<String> remarks) {
    private static final Messages TEXTS = Messages.of(SinkEstimate.class);

    /** Thermal conductivity of the aluminium of sinks in W/(m K). */
    private static final double ALUMINIUM = 200;

    private static final double PLATE_DOUBT = 0.1;
    private static final double FIN_DOUBT = 0.2;
    /** What is left of the resistance with a fan blowing along the fins; common practice, no source. */
    private static final Range FAN_LEFT = new Range(0.25, 0.6);

    private static final double HOTTEST_KELVIN = 600;
    private static final int HALVINGS = 200;

    public SinkEstimate {
        Checks.present(kelvinPerWatt, "kelvinPerWatt");
        Checks.present(riseKelvin, "riseKelvin");
        Checks.notNegative(convectionWatts, "convectionWatts");
        Checks.notNegative(radiationWatts, "radiationWatts");
        remarks = List.copyOf(remarks);
    }

    /**
     * Returns the estimate.
     *
     * @param size of the sink
     * @param watts that it is to carry off, above 0
     * @param airCelsius of the air and of what stands around, -60 to 150
     * @param fan whether a fan blows along the fins
     * @throws IllegalArgumentException if it would get more than 600 K above the air, or if the fins leave no gap between them
     */
    public static SinkEstimate of(SinkSize size, double watts, double airCelsius, boolean fan) {
        Checks.positive(watts, "watts");
        Checks.within(airCelsius, -60, 150, "airCelsius");
        Surface surface = new Surface(size, airCelsius);
        double doubt = surface.finned() ? FIN_DOUBT : PLATE_DOUBT;
        double middle = surface.rise(watts, 1);
        double low = surface.rise(watts, 1 + doubt);
        double high = surface.rise(watts, 1 - doubt);
        List<String> remarks = new ArrayList<>();
        remarks.add(TEXTS.text("sink.formulas", SupplyFigures.format("%.0f", 100 * doubt)));
        if (surface.finned()) {
            remarks.add(TEXTS.text("sink.finned"));
        }
        if (!Convection.laminar(airCelsius + middle, airCelsius, size.heightMetres())) {
            remarks.add(TEXTS.text("sink.turbulent"));
        }
        if (fan) {
            remarks.add(TEXTS.text("sink.fan"));
            low *= FAN_LEFT.low();
            high *= FAN_LEFT.high();
        }
        return new SinkEstimate(
                new Range(low / watts, high / watts),
                new Range(low, high),
                surface.convectionWatts(middle, 1),
                surface.radiationWatts(middle),
                remarks);
    }

    /** Returns the power that the sink carries off at some rise, without a fan, by the formulas as they are. */
    public static double watts(SinkSize size, double riseKelvin, double airCelsius) {
        Checks.within(riseKelvin, 0, HOTTEST_KELVIN, "riseKelvin");
        Checks.within(airCelsius, -60, 150, "airCelsius");
        Surface surface = new Surface(size, airCelsius);
        return riseKelvin > 0 ? surface.convectionWatts(riseKelvin, 1) + surface.radiationWatts(riseKelvin) : 0;
    }

    /** A sink in air of one temperature. */
    private record Surface(SinkSize size, double airCelsius) {
        Surface {
            if (size.finCount() > 1 && spacing(size).orElse(0) <= 0) {
                throw new IllegalArgumentException("size has " + size.finCount() + " fins of "
                        + size.finThicknessMetres() + " m on " + size.lengthMetres()
                        + " m, which leaves no gap between them; check the number and thickness of the fins");
            }
        }

        boolean finned() {
            return size.finCount() > 0 && size.finDepthMetres() > 0;
        }

        static OptionalDouble spacing(SinkSize size) {
            return size.finCount() > 1
                    ? OptionalDouble.of(
                            (size.lengthMetres() - size.finCount() * size.finThicknessMetres()) / (size.finCount() - 1))
                    : OptionalDouble.empty();
        }

        double convectionWatts(double riseKelvin, double factor) {
            double height = size.heightMetres();
            double open = factor * Convection.verticalPlate(riseKelvin, height);
            if (!finned()) {
                return 2 * size.lengthMetres() * height * open * riseKelvin;
            }
            OptionalDouble spacing = spacing(size);
            double between = spacing.isPresent()
                    ? factor * Convection.channel(airCelsius + riseKelvin, airCelsius, spacing.getAsDouble(), height)
                    : open;
            // The outer faces of the first and last fin see open air; the others, and the base between them, a channel.
            double finFace = height * size.finDepthMetres();
            double base = height * (size.lengthMetres() - size.finCount() * size.finThicknessMetres());
            double watts = 2 * finFace * efficiency(open) * open
                    + 2 * (size.finCount() - 1) * finFace * efficiency(between) * between
                    + base * between;
            return watts * riseKelvin;
        }

        /** Returns what is radiated: fins mostly see one another, so only the outside of the whole counts. */
        double radiationWatts(double riseKelvin) {
            double length = size.lengthMetres();
            double height = size.heightMetres();
            double area =
                    finned() ? length * height + 2 * size.finDepthMetres() * (length + height) : 2 * length * height;
            return area
                    * riseKelvin
                    * Convection.radiation(size.emissivityRatio(), airCelsius + riseKelvin, airCelsius);
        }

        double rise(double watts, double factor) {
            if (convectionWatts(HOTTEST_KELVIN, factor) + radiationWatts(HOTTEST_KELVIN) < watts) {
                throw new IllegalArgumentException("watts is " + watts
                        + "; the sink would get more than 600 K above the air. Check its size, or lower the power");
            }
            double low = 0;
            double high = HOTTEST_KELVIN;
            for (int i = 0; i < HALVINGS; i++) {
                double middle = low + (high - low) / 2;
                if (middle <= low || middle >= high) {
                    break;
                }
                if (convectionWatts(middle, factor) + radiationWatts(middle) < watts) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return high;
        }

        private double efficiency(double coefficient) {
            return Convection.finEfficiency(coefficient, ALUMINIUM, size.finThicknessMetres(), size.finDepthMetres());
        }
    }
}
