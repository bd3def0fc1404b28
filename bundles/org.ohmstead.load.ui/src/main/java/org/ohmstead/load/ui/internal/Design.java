// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.load.LoadHeat;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkAnalysis;
import org.ohmstead.load.drawing.NetworkDrawing;
import org.ohmstead.load.drawing.WiringList;

/**
 * All that is shown of one network.
 *
 * @param network with its figures
 * @param analysis at the air's temperature
 * @param bridged whether it hangs between two outputs
 * @param powerWatts what the shares are of; empty when no power is wanted and none is known
 * @param heat at that power; empty without a power, or when it never settles
 * @param drawing with values and shares
 * @param wiring how to build it
 */
record Design(
        FoundNetwork network,
        NetworkAnalysis analysis,
        boolean bridged,
        OptionalDouble powerWatts,
        Optional<LoadHeat> heat,
        NetworkDrawing drawing,
        WiringList wiring) {

    /** Works it all out; not for the user interface's thread. */
    static Design of(FoundNetwork found, Target target) {
        Network network = found.network();
        NetworkAnalysis analysis = NetworkAnalysis.of(network, target.ambientCelsius());
        OptionalDouble limit = analysis.powerLimitWatts();
        OptionalDouble power = target.powerWatts().isPresent() || limit.isEmpty() || limit.getAsDouble() <= 0
                ? target.powerWatts()
                : limit;
        Optional<LoadHeat> heat = power.isEmpty()
                ? Optional.empty()
                : LoadHeat.atWatts(network, power.getAsDouble(), LoadHeat.Air.of(target.ambientCelsius()));
        WiringList.Use use =
                new WiringList.Use(power, target.ambientCelsius(), target.arrangement() == Arrangement.BRIDGED);
        return new Design(
                found,
                analysis,
                use.bridged(),
                power,
                heat,
                NetworkDrawing.of(network, power),
                WiringList.of(network, use));
    }

    /** Returns whether the power is the network's own limit, because none was wanted. */
    boolean atLimit() {
        return powerWatts.isPresent() && powerWatts.equals(analysis.powerLimitWatts());
    }
}
