// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.List;
import java.util.Optional;

/**
 * The instruments of an open bench and what must be known of them.
 *
 * @param connections all of them, each once
 * @param ammeterOhms the shunt whose volts the ammeter reads; 0 when it reads amperes
 */
record BenchParts(
        List<ScpiConnection> connections,
        Optional<PowerSupply> supply,
        Optional<Generator> generator,
        Optional<Recorder> recorder,
        Optional<Multimeter> voltmeter,
        Optional<Multimeter> ammeter,
        double ammeterOhms,
        Optional<Multimeter> caseThermometer,
        Optional<Multimeter> airThermometer,
        Limits limits,
        ScpiOptions options) {
    BenchParts {
        connections = List.copyOf(connections);
    }

    /**
     * What is kept to.
     *
     * @param limitAmps the supply's current limit
     * @param mostVolts what the supply is never set above
     * @param settleSeconds wait after new supply volts
     * @param remoteSense whether the supply's reading is that at the terminals
     * @param agreementVolts how far the terminals may be from what was set
     * @param fullOutputVoltsRms the generator's level at 0 dB
     * @param loadChangedInTime whether somebody connects the loads in time
     */
    record Limits(
            double limitAmps,
            double mostVolts,
            double settleSeconds,
            boolean remoteSense,
            double agreementVolts,
            double fullOutputVoltsRms,
            boolean loadChangedInTime) {}
}
