// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.List;

/**
 * Bodies in a row from the source of heat to the air: the heat enters the first, and each passes on through its resistance what it does not
 * keep. Unlike the stages of a {@link FosterChain} these are places with a temperature, so two ladders may be put in a row: a device on its
 * sink.
 *
 * @param stages from the source to the air, at least one
 */
public record CauerLadder(List<CauerStage> stages) {
    private static final int MOST_STAGES = 50;

    public CauerLadder {
        stages = List.copyOf(stages);
        if (stages.isEmpty() || stages.size() > MOST_STAGES) {
            throw new IllegalArgumentException(
                    "stages has " + stages.size() + " entries; a ladder has 1 to " + MOST_STAGES);
        }
    }

    /**
     * Returns the ladder with the same thermal impedance at its source as a chain: the continued fraction of Z(s), in long decimal numbers,
     * since in double precision it falls apart beyond about six stages. Stages of the chain with the same time constant become one.
     */
    public static CauerLadder of(FosterChain chain) {
        if (chain.stages().size() > MOST_STAGES) {
            throw new IllegalArgumentException(
                    "chain has " + chain.stages().size() + " stages; at most " + MOST_STAGES + " can be turned");
        }
        return new CauerLadder(ContinuedFraction.ladder(chain.stages()));
    }

    /** Returns the chain with the same thermal impedance at the source of this ladder. */
    public FosterChain fosterChain() {
        return new FosterChain(LadderModes.chain(stages));
    }

    /** Returns the resistance for ever from the source to the air in kelvins per watt. */
    public double kelvinPerWatt() {
        return stages.stream().mapToDouble(CauerStage::kelvinPerWatt).sum();
    }

    /** Returns all heat capacities together in joules per kelvin. */
    public double joulesPerKelvin() {
        return stages.stream().mapToDouble(CauerStage::joulesPerKelvin).sum();
    }

    /** Returns this ladder followed by another: what left this one for the air enters the other's first body. */
    public CauerLadder then(CauerLadder next) {
        List<CauerStage> all = new ArrayList<>(stages);
        all.addAll(next.stages);
        return new CauerLadder(all);
    }

    /**
     * Returns this ladder with a resistance at its end, such as a washer under a device, that keeps no heat.
     *
     * @param kelvinPerWatt at least 0
     */
    public CauerLadder through(double kelvinPerWatt) {
        Checks.notNegative(kelvinPerWatt, "kelvinPerWatt");
        List<CauerStage> all = new ArrayList<>(stages);
        CauerStage last = all.remove(all.size() - 1);
        all.add(new CauerStage(last.kelvinPerWatt() + kelvinPerWatt, last.joulesPerKelvin()));
        return new CauerLadder(all);
    }
}
