// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.PartShare;
import org.ohmstead.units.text.Messages;

/**
 * The resistors of one branch of a load under a drive: how warm they get, and whether that may go on. Shares are
 * those of the cold network; temperatures of the rating are those of the case where a part has a sink, otherwise
 * those of the air.
 *
 * @param drive of the whole branch
 * @param ambientCelsius temperature of the air
 * @param parts what becomes of each resistor, from left to right
 */
public record LoadSide(LoadSideDrive drive, double ambientCelsius, List<PartHeating> parts) {
    private static final Messages TEXTS = Messages.of(LoadSide.class);

    public LoadSide {
        Checks.present(drive, "drive");
        Checks.within(ambientCelsius, -60, 120, "ambientCelsius");
        parts = List.copyOf(parts);
    }

    /**
     * Returns what a drive makes of the resistors of a branch.
     *
     * @param shares the resistors and their shares of the power
     * @param drive of the whole branch
     * @param ambientCelsius temperature of the air, -60 to 120
     */
    public static LoadSide of(List<PartShare> shares, LoadSideDrive drive, double ambientCelsius) {
        Checks.present(drive, "drive");
        List<PartHeating> parts = new ArrayList<>();
        for (int i = 0; i < shares.size(); i++) {
            parts.add(part(shares.get(i), "part" + (i + 1), drive, ambientCelsius));
        }
        return new LoadSide(drive, ambientCelsius, parts);
    }

    /** Returns whether every resistor may take the drive for ever, as far as is known. */
    public boolean holds() {
        return parts.stream().allMatch(PartHeating::holds);
    }

    /**
     * Returns the hottest temperature that is known of any place, at the end of a burst, in degrees Celsius; empty
     * when none is.
     */
    public OptionalDouble hottestCelsius() {
        return parts.stream()
                .flatMap(part -> part.places().stream())
                .mapToDouble(PartHeating.PlaceHeat::peakCelsius)
                .max();
    }

    /**
     * Returns the temperature of a place in degrees Celsius after a drive has been on for some time from cold.
     *
     * @param chain of the place
     * @param partDrive the power of the part, beginning with a burst where it has any
     * @param seconds how long, at least 0
     * @param ambientCelsius temperature of the air
     */
    public static double celsiusAfter(
            FosterChain chain, LoadSideDrive partDrive, double seconds, double ambientCelsius) {
        Checks.present(chain, "chain");
        Checks.present(partDrive, "partDrive");
        Checks.notNegative(seconds, "seconds");
        HeatModel model = chain.model();
        double[] state = model.cold();
        double[] watts = {partDrive.peakWatts()};
        if (partDrive instanceof LoadSideDrive.Bursts bursts) {
            double[] between = {bursts.betweenWatts()};
            double pause = bursts.periodSeconds() - bursts.onSeconds();
            double periods = Math.floor(seconds / bursts.periodSeconds());
            double rest = Math.max(0, seconds - periods * bursts.periodSeconds());
            new BurstTrain(watts, bursts.onSeconds(), between, pause).advance(model, state, (long) periods);
            model.advance(state, watts, Math.min(rest, bursts.onSeconds()));
            model.advance(state, between, Math.max(0, rest - bursts.onSeconds()));
        } else {
            model.advance(state, watts, seconds);
        }
        return ambientCelsius + model.riseKelvin(0, state, watts);
    }

    /**
     * The rise at the end of a burst once they have gone on for long: the power between them lasts, the rest comes in
     * pulses.
     */
    static double burstEndKelvin(FosterChain chain, LoadSideDrive.Bursts bursts) {
        double pulses = chain.pulsePeakKelvinPerWatt(bursts.onSeconds(), bursts.periodSeconds());
        return bursts.betweenWatts() * chain.kelvinPerWatt() + (bursts.onWatts() - bursts.betweenWatts()) * pulses;
    }

    private static PartHeating part(PartShare share, String id, LoadSideDrive branch, double ambientCelsius) {
        LoadSideDrive drive = branch.times(share.powerRatio());
        if (share.part().isEmpty()) {
            return new PartHeating(
                    share,
                    drive,
                    OptionalDouble.empty(),
                    List.of(),
                    Optional.empty(),
                    List.of(TEXTS.text("part.unknown", share.name())));
        }
        PartHeatingModel model = new PartHeatingModel(share.part().get(), ambientCelsius);
        double allowed = model.allowedWatts();
        Optional<PartHeatingPulse> pulse = allowed > 0
                ? share.part().get().traits().pulseRule().map(rule -> PartHeatingPulse.of(rule, allowed, drive))
                : Optional.empty();
        List<PartHeating.PlaceHeat> places = model.points(id).stream()
                .map(where -> placeHeat(where, drive, ambientCelsius))
                .toList();
        return new PartHeating(share, drive, OptionalDouble.of(allowed), places, pulse, model.notes());
    }

    private static PartHeating.PlaceHeat placeHeat(PartHeatingPoint where, LoadSideDrive drive, double ambientCelsius) {
        double average = ambientCelsius + drive.averageWatts() * where.chain().kelvinPerWatt();
        double peak = average;
        if (drive instanceof LoadSideDrive.Bursts bursts) {
            peak = ambientCelsius + burstEndKelvin(where.chain(), bursts);
        }
        return new PartHeating.PlaceHeat(where, average, peak);
    }
}
