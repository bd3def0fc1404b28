// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.DoubleUnaryOperator;

/**
 * A network after it has been driven for so long that nothing gets warmer any more: temperatures, the hot value, and what that does to the
 * power. R = R0 (1 + alpha (T - T0)), where T is the temperature of the wire or, when only the sink is known, of the case; a resistor of
 * which neither is known is taken to stay at the air's temperature.
 */
public final class LoadHeat {
    private static final double SETTLED_RATIO = 1e-12;
    private static final int MOST_ROUNDS = 20_000;
    private static final double SMALLEST_STEP = 1.0 / 4096;
    private static final double BEYOND_ALL_REASON = 1e6;

    private final double coldOhms;
    private final double hotOhms;
    private final double powerWatts;
    private final List<PartHeat> parts;

    private LoadHeat(double coldOhms, double hotOhms, double powerWatts, List<PartHeat> parts) {
        this.coldOhms = coldOhms;
        this.hotOhms = hotOhms;
        this.powerWatts = powerWatts;
        this.parts = List.copyOf(parts);
    }

    /**
     * Where a network works.
     *
     * @param ambientCelsius temperature of the air around it
     * @param coldCelsius temperature at which the stated resistances hold
     */
    public record Air(double ambientCelsius, double coldCelsius) {
        public Air {
            Checks.finite(ambientCelsius, "ambientCelsius");
            Checks.finite(coldCelsius, "coldCelsius");
        }

        /** Returns air in which the stated resistances were measured. */
        public static Air of(double ambientCelsius) {
            return new Air(ambientCelsius, ambientCelsius);
        }
    }

    /**
     * Returns the network at a constant voltage; empty when it never settles because less resistance takes more power, without end.
     *
     * @param network which
     * @param voltsRms RMS volts across it, above 0
     * @param air where it works
     */
    public static Optional<LoadHeat> atVolts(Network network, double voltsRms, Air air) {
        Checks.positive(voltsRms, "voltsRms");
        return settle(network, air, ohms -> voltsRms * voltsRms / ohms);
    }

    /**
     * Returns the network at a constant current; empty when it never settles because more resistance takes more power, without end.
     *
     * @param network which
     * @param ampsRms RMS amperes through it, above 0
     * @param air where it works
     */
    public static Optional<LoadHeat> atAmps(Network network, double ampsRms, Air air) {
        Checks.positive(ampsRms, "ampsRms");
        return settle(network, air, ohms -> ampsRms * ampsRms * ohms);
    }

    /**
     * Returns the network at a true power into the hot network; empty when the resistors' temperature coefficients leave no steady state.
     *
     * @param network which
     * @param watts power into it, above 0
     * @param air where it works
     */
    public static Optional<LoadHeat> atWatts(Network network, double watts, Air air) {
        Checks.positive(watts, "watts");
        return settle(network, air, ohms -> watts);
    }

    /**
     * Returns the hot resistance of one resistor at a constant voltage by the closed form (R0 + sqrt(R0^2 + 4 R0 alpha Rth V^2)) / 2; empty
     * when it never settles.
     *
     * @param coldOhms resistance without self-heating, above 0
     * @param perKelvin temperature coefficient relative to {@code coldOhms}
     * @param kelvinPerWatt thermal resistance to the air, at least 0
     * @param voltsRms RMS volts, at least 0
     */
    public static OptionalDouble hotOhmsAtVolts(
            double coldOhms, double perKelvin, double kelvinPerWatt, double voltsRms) {
        checkSingle(coldOhms, perKelvin, kelvinPerWatt);
        Checks.notNegative(voltsRms, "voltsRms");
        double root = coldOhms * coldOhms + 4 * coldOhms * perKelvin * kelvinPerWatt * voltsRms * voltsRms;
        return root < 0 ? OptionalDouble.empty() : OptionalDouble.of((coldOhms + Math.sqrt(root)) / 2);
    }

    /**
     * Returns the hot resistance of one resistor at a constant current by the closed form R0 / (1 - alpha R0 Rth I^2); empty when it never
     * settles.
     *
     * @param coldOhms resistance without self-heating, above 0
     * @param perKelvin temperature coefficient relative to {@code coldOhms}
     * @param kelvinPerWatt thermal resistance to the air, at least 0
     * @param ampsRms RMS amperes, at least 0
     */
    public static OptionalDouble hotOhmsAtAmps(
            double coldOhms, double perKelvin, double kelvinPerWatt, double ampsRms) {
        checkSingle(coldOhms, perKelvin, kelvinPerWatt);
        Checks.notNegative(ampsRms, "ampsRms");
        double left = 1 - perKelvin * coldOhms * kelvinPerWatt * ampsRms * ampsRms;
        return left <= 0 ? OptionalDouble.empty() : OptionalDouble.of(coldOhms / left);
    }

    /** Returns the value in ohms as stated, cold. */
    public double coldOhms() {
        return coldOhms;
    }

    /** Returns the value in ohms when hot. */
    public double hotOhms() {
        return hotOhms;
    }

    /** Returns the true power into the hot network in watts. */
    public double powerWatts() {
        return powerWatts;
    }

    /** Returns the RMS volts across the hot network. */
    public double voltsRms() {
        return Math.sqrt(powerWatts * hotOhms);
    }

    /** Returns the RMS amperes through the hot network. */
    public double ampsRms() {
        return Math.sqrt(powerWatts / hotOhms);
    }

    /** Returns how the true power differs from that of the cold value at the same voltage, relative to the latter; below 0: less. */
    public double powerChangeRatio() {
        return coldOhms / hotOhms - 1;
    }

    /** Returns by how much V^2 over the cold value overstates the true power, relative to the true power. */
    public double overstatementRatio() {
        return hotOhms / coldOhms - 1;
    }

    /** Returns the resistors from left to right. */
    public List<PartHeat> parts() {
        return parts;
    }

    /** Returns the number of the resistor with the least headroom, the leftmost of several; empty when one has no rating. */
    public OptionalInt limitingIndex() {
        int which = 0;
        for (int i = 0; i < parts.size(); i++) {
            if (parts.get(i).headroomRatio().isEmpty()) {
                return OptionalInt.empty();
            }
            if (parts.get(i).headroomRatio().getAsDouble()
                    < parts.get(which).headroomRatio().getAsDouble()) {
                which = i;
            }
        }
        return OptionalInt.of(which);
    }

    /** Returns the least headroom: 1 when the first resistor is at its limit, below 1 beyond it; empty when one has no rating. */
    public OptionalDouble headroomRatio() {
        OptionalInt index = limitingIndex();
        return index.isEmpty()
                ? OptionalDouble.empty()
                : parts.get(index.getAsInt()).headroomRatio();
    }

    /** Returns the highest temperature in degrees Celsius that a hand may meet, of those resistors of which it is known. */
    public OptionalDouble hottestSurfaceCelsius() {
        return parts.stream()
                .filter(part -> part.surfaceCelsius().isPresent())
                .mapToDouble(part -> part.surfaceCelsius().getAsDouble())
                .max();
    }

    private static void checkSingle(double coldOhms, double perKelvin, double kelvinPerWatt) {
        Checks.positive(coldOhms, "coldOhms");
        Checks.finite(perKelvin, "perKelvin");
        Checks.notNegative(kelvinPerWatt, "kelvinPerWatt");
    }

    private static Optional<LoadHeat> settle(Network network, Air air, DoubleUnaryOperator wattsAtOhms) {
        Checks.present(network, "network");
        Checks.present(air, "air");
        List<Resistor> resistors = network.resistors();
        double[] ohms = resistors.stream().mapToDouble(Resistor::ohms).toArray();
        double[] next = new double[ohms.length];
        double[] shares = new double[ohms.length];
        double step = 1;
        double before = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double total = PowerSharing.find(network, ohms, shares);
            double watts = wattsAtOhms.applyAsDouble(total);
            double change = 0;
            for (int i = 0; i < ohms.length; i++) {
                next[i] = hot(resistors.get(i), watts * shares[i], air);
                change = Math.max(change, Math.abs(next[i] - ohms[i]) / ohms[i]);
            }
            if (change <= SETTLED_RATIO) {
                return Optional.of(result(network, air, ohms, watts));
            }
            // A strong rise of resistance swings to and fro; going only part of the way each time calms it.
            if (change >= before && step > SMALLEST_STEP) {
                step /= 2;
            }
            before = change;
            for (int i = 0; i < ohms.length; i++) {
                ohms[i] += step * (next[i] - ohms[i]);
                double ratio = ohms[i] / resistors.get(i).ohms();
                if (!(ratio > 1 / BEYOND_ALL_REASON && ratio < BEYOND_ALL_REASON)) {
                    return Optional.empty();
                }
            }
        }
        return Optional.empty();
    }

    private static double hot(Resistor resistor, double watts, Air air) {
        double kelvinPerWatt = resistor.traits().sinkKelvinPerWatt().orElse(0)
                + resistor.traits().elementKelvinPerWatt().orElse(0);
        double kelvin = air.ambientCelsius() + watts * kelvinPerWatt - air.coldCelsius();
        return resistor.ohms()
                * (1 + resistor.traits().temperatureCoefficientPerKelvin().orElse(0) * kelvin);
    }

    private static LoadHeat result(Network network, Air air, double[] ohms, double watts) {
        double[] shares = new double[ohms.length];
        double hotOhms = PowerSharing.find(network, ohms, shares);
        List<Resistor> resistors = network.resistors();
        List<PartHeat> parts = new ArrayList<>();
        for (int i = 0; i < ohms.length; i++) {
            parts.add(PartHeat.of(resistors.get(i), watts * shares[i], shares[i], ohms[i], air.ambientCelsius()));
        }
        return new LoadHeat(network.ohms(), hotOhms, watts, parts);
    }
}
