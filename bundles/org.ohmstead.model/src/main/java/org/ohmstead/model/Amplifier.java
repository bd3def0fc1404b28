// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The device under test.
 *
 * @param maker who made it; may be empty
 * @param model its model name, not blank
 * @param serialNumber of the specimen tested; may be empty
 * @param channelCount number of channels, 1 to 16
 * @param supplyType what its converter does with the supply volts
 * @param lowestLoads the lowest load allowed, at most one for each mode
 * @param fuses its fuses
 * @param heatSinkKelvinPerWatt thermal resistance of its sink to the air in kelvin per watt, when known
 * @param ratings what its maker claims
 * @param notes anything else; may be empty
 * @param price what it cost, when known
 */
public record Amplifier(
        String maker,
        String model,
        String serialNumber,
        int channelCount,
        SupplyType supplyType,
        List<LowestLoad> lowestLoads,
        List<Fuse> fuses,
        OptionalDouble heatSinkKelvinPerWatt,
        List<Rating> ratings,
        String notes,
        Optional<Price> price) {
    public Amplifier {
        Checks.present(maker, "maker");
        Checks.named(model, "model");
        Checks.present(serialNumber, "serialNumber");
        Checks.within(channelCount, 1, 16, "channelCount");
        Checks.present(supplyType, "supplyType");
        lowestLoads = List.copyOf(lowestLoads);
        fuses = List.copyOf(fuses);
        heatSinkKelvinPerWatt.ifPresent(value -> Checks.positive(value, "heatSinkKelvinPerWatt"));
        ratings = List.copyOf(ratings);
        Checks.present(notes, "notes");
        Checks.present(price, "price");
    }

    /** Makes an amplifier whose price is not known. */
    public Amplifier(
            String maker,
            String model,
            String serialNumber,
            int channelCount,
            SupplyType supplyType,
            List<LowestLoad> lowestLoads,
            List<Fuse> fuses,
            OptionalDouble heatSinkKelvinPerWatt,
            List<Rating> ratings,
            String notes) {
        this(
                maker,
                model,
                serialNumber,
                channelCount,
                supplyType,
                lowestLoads,
                fuses,
                heatSinkKelvinPerWatt,
                ratings,
                notes,
                Optional.empty());
    }

    /** Returns maker and model as one text; the model alone when the maker is not known. */
    public String fullName() {
        return (maker.strip() + " " + model.strip()).strip();
    }

    /** Returns the lowest load in ohms that the maker allows in a mode, or empty when none is stated. */
    public OptionalDouble lowestLoadOhms(Mode mode) {
        return lowestLoads.stream()
                .filter(lowest -> lowest.mode() == mode)
                .mapToDouble(LowestLoad::loadOhms)
                .min();
    }

    /** Returns the fuses' rated currents added up, in amperes; 0 when no fuse is listed. */
    public double totalFuseAmps() {
        return fuses.stream().mapToDouble(Fuse::ratedAmps).sum();
    }

    /** Returns this amplifier with other ratings. */
    public Amplifier withRatings(List<Rating> newRatings) {
        return new Amplifier(
                maker,
                model,
                serialNumber,
                channelCount,
                supplyType,
                lowestLoads,
                fuses,
                heatSinkKelvinPerWatt,
                newRatings,
                notes,
                price);
    }

    /** Returns this amplifier with another maker. */
    public Amplifier withMaker(String newMaker) {
        return new Amplifier(
                newMaker,
                model,
                serialNumber,
                channelCount,
                supplyType,
                lowestLoads,
                fuses,
                heatSinkKelvinPerWatt,
                ratings,
                notes,
                price);
    }

    /** Returns this amplifier with another model. */
    public Amplifier withModel(String newModel) {
        return new Amplifier(
                maker,
                newModel,
                serialNumber,
                channelCount,
                supplyType,
                lowestLoads,
                fuses,
                heatSinkKelvinPerWatt,
                ratings,
                notes,
                price);
    }

    /** Returns this amplifier with another serial number. */
    public Amplifier withSerialNumber(String newSerialNumber) {
        return new Amplifier(
                maker,
                model,
                newSerialNumber,
                channelCount,
                supplyType,
                lowestLoads,
                fuses,
                heatSinkKelvinPerWatt,
                ratings,
                notes,
                price);
    }

    /** Returns this amplifier with another channel count. */
    public Amplifier withChannelCount(int newChannelCount) {
        return new Amplifier(
                maker,
                model,
                serialNumber,
                newChannelCount,
                supplyType,
                lowestLoads,
                fuses,
                heatSinkKelvinPerWatt,
                ratings,
                notes,
                price);
    }

    /** Returns this amplifier with another supply type. */
    public Amplifier withSupplyType(SupplyType newSupplyType) {
        return new Amplifier(
                maker,
                model,
                serialNumber,
                channelCount,
                newSupplyType,
                lowestLoads,
                fuses,
                heatSinkKelvinPerWatt,
                ratings,
                notes,
                price);
    }

    /** Returns this amplifier with other lowest loads. */
    public Amplifier withLowestLoads(List<LowestLoad> newLowestLoads) {
        return new Amplifier(
                maker,
                model,
                serialNumber,
                channelCount,
                supplyType,
                newLowestLoads,
                fuses,
                heatSinkKelvinPerWatt,
                ratings,
                notes,
                price);
    }

    /** Returns this amplifier with other fuses. */
    public Amplifier withFuses(List<Fuse> newFuses) {
        return new Amplifier(
                maker,
                model,
                serialNumber,
                channelCount,
                supplyType,
                lowestLoads,
                newFuses,
                heatSinkKelvinPerWatt,
                ratings,
                notes,
                price);
    }

    /** Returns this amplifier with another thermal resistance of its sink in kelvin per watt, or none. */
    public Amplifier withHeatSinkKelvinPerWatt(OptionalDouble newHeatSinkKelvinPerWatt) {
        return new Amplifier(
                maker,
                model,
                serialNumber,
                channelCount,
                supplyType,
                lowestLoads,
                fuses,
                newHeatSinkKelvinPerWatt,
                ratings,
                notes,
                price);
    }

    /** Returns this amplifier with other notes. */
    public Amplifier withNotes(String newNotes) {
        return new Amplifier(
                maker,
                model,
                serialNumber,
                channelCount,
                supplyType,
                lowestLoads,
                fuses,
                heatSinkKelvinPerWatt,
                ratings,
                newNotes,
                price);
    }

    /** Returns this amplifier with another price, or none. */
    public Amplifier withPrice(Optional<Price> newPrice) {
        return new Amplifier(
                maker,
                model,
                serialNumber,
                channelCount,
                supplyType,
                lowestLoads,
                fuses,
                heatSinkKelvinPerWatt,
                ratings,
                notes,
                newPrice);
    }
}
