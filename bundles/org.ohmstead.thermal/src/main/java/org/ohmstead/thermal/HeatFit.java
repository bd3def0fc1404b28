// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;
import java.util.Optional;

/** What came of fitting a logged warm-up or cool-down. */
public sealed interface HeatFit {
    /**
     * The record tells something.
     *
     * @param stages one or two time constants, fastest first
     * @param kelvinPerWatt resistance to the air of all stages together; empty for a cool-down, which cannot tell it
     * @param airCelsius temperature of the air; empty when it was given
     * @param noiseKelvin standard deviation of the readings about the curve: the thermometer's noise
     * @param residuals every reading with what the curve gives
     * @param remarks what to keep in mind, in whole sentences
     */
    record Found(
            List<Stage> stages,
            Optional<FittedFigure> kelvinPerWatt,
            Optional<FittedFigure> airCelsius,
            double noiseKelvin,
            List<Residual> residuals,
            List<String> remarks)
            implements HeatFit {
        public Found {
            stages = List.copyOf(stages);
            Checks.present(kelvinPerWatt, "kelvinPerWatt");
            Checks.present(airCelsius, "airCelsius");
            Checks.notNegative(noiseKelvin, "noiseKelvin");
            residuals = List.copyOf(residuals);
            remarks = List.copyOf(remarks);
        }

        /** Returns the chain of the stages, or empty for a cool-down. */
        public Optional<FosterChain> chain() {
            return kelvinPerWatt.map(any -> new FosterChain(stages.stream()
                    .map(stage -> new FosterStage(
                            stage.kelvinPerWatt().orElseThrow().value(),
                            stage.tauSeconds().value()))
                    .toList()));
        }
    }

    /**
     * The record does not tell.
     *
     * @param reason why not
     * @param remedy what record would
     */
    record Refused(String reason, String remedy) implements HeatFit {
        public Refused {
            Checks.named(reason, "reason");
            Checks.named(remedy, "remedy");
        }
    }

    /**
     * One time constant.
     *
     * @param tauSeconds the time constant
     * @param kelvinPerWatt its resistance; empty for a cool-down
     * @param joulesPerKelvin its heat capacity, tau over resistance; empty for a cool-down
     */
    record Stage(
            FittedFigure tauSeconds, Optional<FittedFigure> kelvinPerWatt, Optional<FittedFigure> joulesPerKelvin) {
        public Stage {
            Checks.present(tauSeconds, "tauSeconds");
            Checks.present(kelvinPerWatt, "kelvinPerWatt");
            Checks.present(joulesPerKelvin, "joulesPerKelvin");
        }
    }

    /**
     * A reading beside the curve.
     *
     * @param seconds when
     * @param celsius what was read
     * @param fittedCelsius what the curve gives
     */
    record Residual(double seconds, double celsius, double fittedCelsius) {
        /** Returns reading minus curve in kelvins. */
        public double kelvin() {
            return celsius - fittedCelsius;
        }
    }
}
