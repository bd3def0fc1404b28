// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import org.junit.jupiter.api.Nested;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.testkit.MeasurementContract;

/** What every measurement must keep to, for each of the built-in ones. */
class ContractsTest {
    @Nested
    class BurstPowerKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new BurstPower();
        }
    }

    @Nested
    class ChannelMatchKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new ChannelMatch();
        }
    }

    @Nested
    class ChannelSeparationKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new ChannelSeparation();
        }
    }

    @Nested
    class EfficiencyAndSupplyKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new EfficiencyAndSupply();
        }
    }

    @Nested
    class FrequencyResponseKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new FrequencyResponse();
        }
    }

    @Nested
    class GainAndSensitivityKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new GainAndSensitivity();
        }
    }

    @Nested
    class IdleDrawKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new IdleDraw();
        }
    }

    @Nested
    class OutputImpedanceKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new OutputImpedance();
        }
    }

    @Nested
    class PowerAgainstFrequencyKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PowerAgainstFrequency();
        }
    }

    @Nested
    class PowerAtEndPointKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new PowerAtEndPoint();
        }
    }

    @Nested
    class ResidualNoiseKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new ResidualNoise();
        }
    }

    @Nested
    class SoundLevelKeeps extends MeasurementContract {
        @Override
        protected Measurement measurement() {
            return new SoundLevel();
        }
    }
}
