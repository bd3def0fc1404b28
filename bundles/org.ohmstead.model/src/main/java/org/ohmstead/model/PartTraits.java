// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What else may be known of a resistor. All of it may be missing; what is missing is not guessed.
 *
 * @param measured whether the resistance was measured; otherwise it is the nominal one
 * @param temperatureCoefficientPerKelvin relative change of the resistance per kelvin, 100e-6 for 100 ppm/K, between -0.1 and 0.1
 * @param inductanceHenries series inductance in henries, at least 0
 * @param sinkKelvinPerWatt thermal resistance from the case to the air in kelvins per watt, above 0; when it is there, the
 *     temperatures of the rating are those of the case, otherwise those of the air
 * @param elementKelvinPerWatt thermal resistance from the wire to the case, or to the air where no sink is given, in kelvins per watt,
 *     above 0
 * @param pulseRule the short overload allowed
 */
public record PartTraits(
        boolean measured,
        OptionalDouble temperatureCoefficientPerKelvin,
        OptionalDouble inductanceHenries,
        OptionalDouble sinkKelvinPerWatt,
        OptionalDouble elementKelvinPerWatt,
        Optional<PulseRule> pulseRule) {
    /** Nothing known. */
    public static final PartTraits NONE = new PartTraits(
            false,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty());

    private static final double STEEPEST_PER_KELVIN = 0.1;

    public PartTraits {
        Checks.present(temperatureCoefficientPerKelvin, "temperatureCoefficientPerKelvin");
        Checks.present(inductanceHenries, "inductanceHenries");
        Checks.present(sinkKelvinPerWatt, "sinkKelvinPerWatt");
        Checks.present(elementKelvinPerWatt, "elementKelvinPerWatt");
        Checks.present(pulseRule, "pulseRule");
        temperatureCoefficientPerKelvin.ifPresent(value ->
                Checks.within(value, -STEEPEST_PER_KELVIN, STEEPEST_PER_KELVIN, "temperatureCoefficientPerKelvin"));
        inductanceHenries.ifPresent(value -> Checks.notNegative(value, "inductanceHenries"));
        sinkKelvinPerWatt.ifPresent(value -> Checks.positive(value, "sinkKelvinPerWatt"));
        elementKelvinPerWatt.ifPresent(value -> Checks.positive(value, "elementKelvinPerWatt"));
    }

    /** Returns these traits with another answer: whether the resistance was measured. */
    public PartTraits withMeasured(boolean newMeasured) {
        return new PartTraits(
                newMeasured,
                temperatureCoefficientPerKelvin,
                inductanceHenries,
                sinkKelvinPerWatt,
                elementKelvinPerWatt,
                pulseRule);
    }

    /** Returns these traits with another temperature coefficient per kelvin, or none. */
    public PartTraits withTemperatureCoefficientPerKelvin(OptionalDouble newTemperatureCoefficientPerKelvin) {
        return new PartTraits(
                measured,
                newTemperatureCoefficientPerKelvin,
                inductanceHenries,
                sinkKelvinPerWatt,
                elementKelvinPerWatt,
                pulseRule);
    }

    /** Returns these traits with another inductance in henries, or none. */
    public PartTraits withInductanceHenries(OptionalDouble newInductanceHenries) {
        return new PartTraits(
                measured,
                temperatureCoefficientPerKelvin,
                newInductanceHenries,
                sinkKelvinPerWatt,
                elementKelvinPerWatt,
                pulseRule);
    }

    /** Returns these traits with another thermal resistance from the case to the air in kelvins per watt, or none. */
    public PartTraits withSinkKelvinPerWatt(OptionalDouble newSinkKelvinPerWatt) {
        return new PartTraits(
                measured,
                temperatureCoefficientPerKelvin,
                inductanceHenries,
                newSinkKelvinPerWatt,
                elementKelvinPerWatt,
                pulseRule);
    }

    /** Returns these traits with another thermal resistance from the wire in kelvins per watt, or none. */
    public PartTraits withElementKelvinPerWatt(OptionalDouble newElementKelvinPerWatt) {
        return new PartTraits(
                measured,
                temperatureCoefficientPerKelvin,
                inductanceHenries,
                sinkKelvinPerWatt,
                newElementKelvinPerWatt,
                pulseRule);
    }

    /** Returns these traits with another short overload, or none. */
    public PartTraits withPulseRule(Optional<PulseRule> newPulseRule) {
        return new PartTraits(
                measured,
                temperatureCoefficientPerKelvin,
                inductanceHenries,
                sinkKelvinPerWatt,
                elementKelvinPerWatt,
                newPulseRule);
    }
}
