// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where and with what the amplifier is tested.
 *
 * @param place the room or laboratory; may be empty
 * @param supply the direct-current supply
 * @param cable from the supply to the amplifier
 * @param meters the instruments
 * @param parts the stock of load resistors
 * @param ambientCelsius usual air temperature, when known
 * @param repeatability how closely it finds the same power again, when that was studied
 */
public record Bench(
        String place,
        Supply supply,
        Cable cable,
        List<Meter> meters,
        List<Part> parts,
        OptionalDouble ambientCelsius,
        Optional<Repeatability> repeatability) {
    public Bench {
        Checks.present(place, "place");
        Checks.present(supply, "supply");
        Checks.present(cable, "cable");
        meters = List.copyOf(meters);
        parts = List.copyOf(parts);
        ambientCelsius.ifPresent(value -> Checks.within(value, -60, 120, "ambientCelsius"));
        Checks.present(repeatability, "repeatability");
    }

    /** Makes a bench whose repeatability was not studied. */
    public Bench(
            String place,
            Supply supply,
            Cable cable,
            List<Meter> meters,
            List<Part> parts,
            OptionalDouble ambientCelsius) {
        this(place, supply, cable, meters, parts, ambientCelsius, Optional.empty());
    }

    /** Returns the first meter that reads a quantity, or empty when the bench has none. */
    public Optional<Meter> meterFor(MeterQuantity quantity) {
        return meters.stream().filter(meter -> meter.quantity() == quantity).findFirst();
    }

    /** Returns this bench with another place. */
    public Bench withPlace(String newPlace) {
        return new Bench(newPlace, supply, cable, meters, parts, ambientCelsius, repeatability);
    }

    /** Returns this bench with another supply. */
    public Bench withSupply(Supply newSupply) {
        return new Bench(place, newSupply, cable, meters, parts, ambientCelsius, repeatability);
    }

    /** Returns this bench with another cable. */
    public Bench withCable(Cable newCable) {
        return new Bench(place, supply, newCable, meters, parts, ambientCelsius, repeatability);
    }

    /** Returns this bench with other meters. */
    public Bench withMeters(List<Meter> newMeters) {
        return new Bench(place, supply, cable, newMeters, parts, ambientCelsius, repeatability);
    }

    /** Returns this bench with other parts. */
    public Bench withParts(List<Part> newParts) {
        return new Bench(place, supply, cable, meters, newParts, ambientCelsius, repeatability);
    }

    /** Returns this bench with another usual air temperature, or none. */
    public Bench withAmbientCelsius(OptionalDouble newAmbientCelsius) {
        return new Bench(place, supply, cable, meters, parts, newAmbientCelsius, repeatability);
    }

    /** Returns this bench with another repeatability, or none. */
    public Bench withRepeatability(Optional<Repeatability> newRepeatability) {
        return new Bench(place, supply, cable, meters, parts, ambientCelsius, newRepeatability);
    }
}
