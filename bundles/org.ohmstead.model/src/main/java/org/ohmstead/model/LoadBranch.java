// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * One resistance that the amplifier works into, as seen from its output terminals with the leads in place.
 *
 * @param ohms measured resistance in ohms, above 0
 * @param standardUncertaintyOhms standard uncertainty of it in ohms, at least 0
 * @param inductanceHenries series inductance in henries, at least 0; 0 when it plays no part
 * @param network how it is made of parts, for example "(8R2||8R2)+0R47"; may be empty
 */
public record LoadBranch(double ohms, double standardUncertaintyOhms, double inductanceHenries, String network) {
    public LoadBranch {
        Checks.positive(ohms, "ohms");
        Checks.notNegative(standardUncertaintyOhms, "standardUncertaintyOhms");
        Checks.notNegative(inductanceHenries, "inductanceHenries");
        Checks.present(network, "network");
    }

    /** Returns this branch with another resistance in ohms. */
    public LoadBranch withOhms(double newOhms) {
        return new LoadBranch(newOhms, standardUncertaintyOhms, inductanceHenries, network);
    }

    /** Returns this branch with another standard uncertainty in ohms. */
    public LoadBranch withStandardUncertaintyOhms(double newStandardUncertaintyOhms) {
        return new LoadBranch(ohms, newStandardUncertaintyOhms, inductanceHenries, network);
    }

    /** Returns this branch with another inductance in henries. */
    public LoadBranch withInductanceHenries(double newInductanceHenries) {
        return new LoadBranch(ohms, standardUncertaintyOhms, newInductanceHenries, network);
    }

    /** Returns this branch with another network. */
    public LoadBranch withNetwork(String newNetwork) {
        return new LoadBranch(ohms, standardUncertaintyOhms, inductanceHenries, newNetwork);
    }
}
