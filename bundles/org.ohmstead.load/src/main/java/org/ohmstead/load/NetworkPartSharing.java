// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartShare;
import org.ohmstead.model.PartSharing;
import org.osgi.service.component.annotations.Component;

/** Reads the network of a branch and tells how power falls on its resistors; in a running framework a service. */
@Component
public final class NetworkPartSharing implements PartSharing {
    // How often a part is there is the business of the precautions; here it only would hide the rest.
    private static final NetworkNotation.Options READING = NetworkNotation.Options.USUAL.withCountsChecked(false);

    // The analysis wants some air temperature for its limits, which are not asked for here.
    private static final double ANY_CELSIUS = 25;

    /** Makes the service, which keeps nothing. */
    public NetworkPartSharing() {
        // for the framework
    }

    @Override
    public List<PartShare> shares(List<Part> stock, LoadBranch branch) {
        if (branch.network().isBlank()) {
            return List.of();
        }
        Network network;
        try {
            network = NetworkNotation.parse(branch.network(), Stock.of(stock), READING);
        } catch (NotationException unreadable) {
            return List.of(); // LoadPrecautions says so where the network stands
        }
        NetworkAnalysis analysis = NetworkAnalysis.of(network, ANY_CELSIUS);
        List<PartShare> shares = new ArrayList<>();
        for (int i = 0; i < analysis.size(); i++) {
            Resistor resistor = analysis.resistor(i);
            shares.add(new PartShare(resistor.id(), resistor.ohms(), analysis.share(i), part(stock, resistor)));
        }
        return List.copyOf(shares);
    }

    /** The part of the stock; else one made of what the notation says, when it says a power. */
    private static Optional<Part> part(List<Part> stock, Resistor resistor) {
        Optional<Part> own =
                stock.stream().filter(part -> part.id().equals(resistor.id())).findFirst();
        return own.or(() -> resistor.rating()
                .map(rating -> new Part(
                        resistor.id(),
                        resistor.ohms(),
                        resistor.toleranceRatio(),
                        rating.ratedWatts(),
                        rating.ratedToCelsius(),
                        rating.zeroPowerCelsius(),
                        Mounting.FREE_AIR,
                        1,
                        resistor.traits())));
    }
}
