// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of how an amplifier turns power into heat and gets rid of it. All of it may be missing; what is missing is estimated
 * where it is needed, and said to be.
 *
 * @param outputClass how the output stage makes its power
 * @param railVolts each rail of a linear output stage to ground, in volts, above 0, at {@code railSupplyVolts}
 * @param railSupplyVolts supply volts at which {@code railVolts} holds, above 0
 * @param converterEfficiencyRatio efficiency of the internal converter, above 0 and up to 1
 * @param idleWatts what the amplifier takes without a signal in watts, at least 0
 * @param caseKelvinPerWatt thermal resistance from the case to the air in kelvins per watt, above 0
 * @param caseJoulesPerKelvin heat capacity of the case in joules per kelvin, above 0
 * @param deviceKelvinPerWatt thermal resistance from the junctions of all output devices together to the case in kelvins per watt, at
 *     least 0
 * @param deviceLimitCelsius the hottest that a junction may get, in degrees Celsius
 * @param caseLimitCelsius the hottest that the case may get, in degrees Celsius
 * @param sinkSize its outside, for an estimate when {@code caseKelvinPerWatt} is not known
 */
public record AmplifierHeat(
        OutputClass outputClass,
        OptionalDouble railVolts,
        OptionalDouble railSupplyVolts,
        Optional<Range> converterEfficiencyRatio,
        Optional<Range> idleWatts,
        Optional<Range> caseKelvinPerWatt,
        Optional<Range> caseJoulesPerKelvin,
        Optional<Range> deviceKelvinPerWatt,
        OptionalDouble deviceLimitCelsius,
        OptionalDouble caseLimitCelsius,
        Optional<SinkSize> sinkSize) {
    /** Nothing known. */
    public static final AmplifierHeat NONE = new AmplifierHeat(
            OutputClass.UNKNOWN,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty());

    public AmplifierHeat {
        Checks.present(outputClass, "outputClass");
        Checks.present(railVolts, "railVolts").ifPresent(value -> Checks.positive(value, "railVolts"));
        Checks.present(railSupplyVolts, "railSupplyVolts")
                .ifPresent(value -> Checks.positive(value, "railSupplyVolts"));
        Checks.present(converterEfficiencyRatio, "converterEfficiencyRatio").ifPresent(range -> {
            Checks.positive(range.low(), "converterEfficiencyRatio.low");
            Checks.within(range.high(), 0, 1, "converterEfficiencyRatio.high");
        });
        Checks.present(idleWatts, "idleWatts").ifPresent(range -> Checks.notNegative(range.low(), "idleWatts.low"));
        Checks.present(caseKelvinPerWatt, "caseKelvinPerWatt")
                .ifPresent(range -> Checks.positive(range.low(), "caseKelvinPerWatt.low"));
        Checks.present(caseJoulesPerKelvin, "caseJoulesPerKelvin")
                .ifPresent(range -> Checks.positive(range.low(), "caseJoulesPerKelvin.low"));
        Checks.present(deviceKelvinPerWatt, "deviceKelvinPerWatt")
                .ifPresent(range -> Checks.notNegative(range.low(), "deviceKelvinPerWatt.low"));
        Checks.present(deviceLimitCelsius, "deviceLimitCelsius")
                .ifPresent(value -> Checks.within(value, -60, 400, "deviceLimitCelsius"));
        Checks.present(caseLimitCelsius, "caseLimitCelsius")
                .ifPresent(value -> Checks.within(value, -60, 400, "caseLimitCelsius"));
        Checks.present(sinkSize, "sinkSize");
    }

    /** Returns these data with another class of the output stage. */
    public AmplifierHeat withOutputClass(OutputClass newOutputClass) {
        return new AmplifierHeat(
                newOutputClass,
                railVolts,
                railSupplyVolts,
                converterEfficiencyRatio,
                idleWatts,
                caseKelvinPerWatt,
                caseJoulesPerKelvin,
                deviceKelvinPerWatt,
                deviceLimitCelsius,
                caseLimitCelsius,
                sinkSize);
    }

    /** Returns these data with other rail volts, or none. */
    public AmplifierHeat withRailVolts(OptionalDouble newRailVolts) {
        return new AmplifierHeat(
                outputClass,
                newRailVolts,
                railSupplyVolts,
                converterEfficiencyRatio,
                idleWatts,
                caseKelvinPerWatt,
                caseJoulesPerKelvin,
                deviceKelvinPerWatt,
                deviceLimitCelsius,
                caseLimitCelsius,
                sinkSize);
    }

    /** Returns these data with other supply volts at which the rail volts hold, or none. */
    public AmplifierHeat withRailSupplyVolts(OptionalDouble newRailSupplyVolts) {
        return new AmplifierHeat(
                outputClass,
                railVolts,
                newRailSupplyVolts,
                converterEfficiencyRatio,
                idleWatts,
                caseKelvinPerWatt,
                caseJoulesPerKelvin,
                deviceKelvinPerWatt,
                deviceLimitCelsius,
                caseLimitCelsius,
                sinkSize);
    }

    /** Returns these data with another efficiency of the converter, or none. */
    public AmplifierHeat withConverterEfficiencyRatio(Optional<Range> newConverterEfficiencyRatio) {
        return new AmplifierHeat(
                outputClass,
                railVolts,
                railSupplyVolts,
                newConverterEfficiencyRatio,
                idleWatts,
                caseKelvinPerWatt,
                caseJoulesPerKelvin,
                deviceKelvinPerWatt,
                deviceLimitCelsius,
                caseLimitCelsius,
                sinkSize);
    }

    /** Returns these data with another idle power in watts, or none. */
    public AmplifierHeat withIdleWatts(Optional<Range> newIdleWatts) {
        return new AmplifierHeat(
                outputClass,
                railVolts,
                railSupplyVolts,
                converterEfficiencyRatio,
                newIdleWatts,
                caseKelvinPerWatt,
                caseJoulesPerKelvin,
                deviceKelvinPerWatt,
                deviceLimitCelsius,
                caseLimitCelsius,
                sinkSize);
    }

    /** Returns these data with another thermal resistance of the case in kelvins per watt, or none. */
    public AmplifierHeat withCaseKelvinPerWatt(Optional<Range> newCaseKelvinPerWatt) {
        return new AmplifierHeat(
                outputClass,
                railVolts,
                railSupplyVolts,
                converterEfficiencyRatio,
                idleWatts,
                newCaseKelvinPerWatt,
                caseJoulesPerKelvin,
                deviceKelvinPerWatt,
                deviceLimitCelsius,
                caseLimitCelsius,
                sinkSize);
    }

    /** Returns these data with another heat capacity of the case in joules per kelvin, or none. */
    public AmplifierHeat withCaseJoulesPerKelvin(Optional<Range> newCaseJoulesPerKelvin) {
        return new AmplifierHeat(
                outputClass,
                railVolts,
                railSupplyVolts,
                converterEfficiencyRatio,
                idleWatts,
                caseKelvinPerWatt,
                newCaseJoulesPerKelvin,
                deviceKelvinPerWatt,
                deviceLimitCelsius,
                caseLimitCelsius,
                sinkSize);
    }

    /** Returns these data with another thermal resistance from the junctions to the case in kelvins per watt, or none. */
    public AmplifierHeat withDeviceKelvinPerWatt(Optional<Range> newDeviceKelvinPerWatt) {
        return new AmplifierHeat(
                outputClass,
                railVolts,
                railSupplyVolts,
                converterEfficiencyRatio,
                idleWatts,
                caseKelvinPerWatt,
                caseJoulesPerKelvin,
                newDeviceKelvinPerWatt,
                deviceLimitCelsius,
                caseLimitCelsius,
                sinkSize);
    }

    /** Returns these data with another limit of the junctions in degrees Celsius, or none. */
    public AmplifierHeat withDeviceLimitCelsius(OptionalDouble newDeviceLimitCelsius) {
        return new AmplifierHeat(
                outputClass,
                railVolts,
                railSupplyVolts,
                converterEfficiencyRatio,
                idleWatts,
                caseKelvinPerWatt,
                caseJoulesPerKelvin,
                deviceKelvinPerWatt,
                newDeviceLimitCelsius,
                caseLimitCelsius,
                sinkSize);
    }

    /** Returns these data with another limit of the case in degrees Celsius, or none. */
    public AmplifierHeat withCaseLimitCelsius(OptionalDouble newCaseLimitCelsius) {
        return new AmplifierHeat(
                outputClass,
                railVolts,
                railSupplyVolts,
                converterEfficiencyRatio,
                idleWatts,
                caseKelvinPerWatt,
                caseJoulesPerKelvin,
                deviceKelvinPerWatt,
                deviceLimitCelsius,
                newCaseLimitCelsius,
                sinkSize);
    }

    /** Returns these data with another outside, or none. */
    public AmplifierHeat withSinkSize(Optional<SinkSize> newSinkSize) {
        return new AmplifierHeat(
                outputClass,
                railVolts,
                railSupplyVolts,
                converterEfficiencyRatio,
                idleWatts,
                caseKelvinPerWatt,
                caseJoulesPerKelvin,
                deviceKelvinPerWatt,
                deviceLimitCelsius,
                caseLimitCelsius,
                newSinkSize);
    }
}
