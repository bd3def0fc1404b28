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
 * @param heatingRatio bound by which the resistance may differ at power because it is hot, as a ratio to it, 0 to 1; 0 when not stated
 * @param leadStandardUncertaintyOhms standard uncertainty in ohms of what leads and contacts add between where the resistance was
 *     measured and where it works, at least 0; 0 for none
 */
public record LoadBranch(
        double ohms,
        double standardUncertaintyOhms,
        double inductanceHenries,
        String network,
        double heatingRatio,
        double leadStandardUncertaintyOhms) {
    public LoadBranch {
        Checks.positive(ohms, "ohms");
        Checks.notNegative(standardUncertaintyOhms, "standardUncertaintyOhms");
        Checks.notNegative(inductanceHenries, "inductanceHenries");
        Checks.present(network, "network");
        Checks.within(heatingRatio, 0, 1, "heatingRatio");
        Checks.notNegative(leadStandardUncertaintyOhms, "leadStandardUncertaintyOhms");
    }

    /** Makes a branch of which no heating is stated and whose leads add nothing. */
    public LoadBranch(double ohms, double standardUncertaintyOhms, double inductanceHenries, String network) {
        this(ohms, standardUncertaintyOhms, inductanceHenries, network, 0, 0);
    }

    /** Returns this branch with another resistance in ohms. */
    public LoadBranch withOhms(double newOhms) {
        return new LoadBranch(
                newOhms,
                standardUncertaintyOhms,
                inductanceHenries,
                network,
                heatingRatio,
                leadStandardUncertaintyOhms);
    }

    /** Returns this branch with another standard uncertainty in ohms. */
    public LoadBranch withStandardUncertaintyOhms(double newStandardUncertaintyOhms) {
        return new LoadBranch(
                ohms,
                newStandardUncertaintyOhms,
                inductanceHenries,
                network,
                heatingRatio,
                leadStandardUncertaintyOhms);
    }

    /** Returns this branch with another inductance in henries. */
    public LoadBranch withInductanceHenries(double newInductanceHenries) {
        return new LoadBranch(
                ohms,
                standardUncertaintyOhms,
                newInductanceHenries,
                network,
                heatingRatio,
                leadStandardUncertaintyOhms);
    }

    /** Returns this branch with another network. */
    public LoadBranch withNetwork(String newNetwork) {
        return new LoadBranch(
                ohms,
                standardUncertaintyOhms,
                inductanceHenries,
                newNetwork,
                heatingRatio,
                leadStandardUncertaintyOhms);
    }

    /** Returns this branch with another bound on what heat does to it, as a ratio. */
    public LoadBranch withHeatingRatio(double newHeatingRatio) {
        return new LoadBranch(
                ohms,
                standardUncertaintyOhms,
                inductanceHenries,
                network,
                newHeatingRatio,
                leadStandardUncertaintyOhms);
    }

    /** Returns this branch with another standard uncertainty of its leads and contacts in ohms. */
    public LoadBranch withLeadStandardUncertaintyOhms(double newLeadStandardUncertaintyOhms) {
        return new LoadBranch(
                ohms,
                standardUncertaintyOhms,
                inductanceHenries,
                network,
                heatingRatio,
                newLeadStandardUncertaintyOhms);
    }
}
