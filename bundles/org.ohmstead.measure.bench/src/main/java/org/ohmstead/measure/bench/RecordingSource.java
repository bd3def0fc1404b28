// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Subject;

/** Knows the captures that were recorded of a step; how their list is kept is its own business. A service. */
public interface RecordingSource {
    /**
     * Returns the recordings of a subject's step, in any order.
     *
     * @param folder where they lie
     * @throws MeasurementException when the list cannot be read; the message says what to do
     */
    List<Recorded> recordings(Path folder, Subject subject) throws MeasurementException;

    /**
     * A capture that was recorded, with what the meters showed.
     *
     * @param file the capture
     * @param driveDb level in dB relative to the source's full output
     * @param voltsPerFullScale volts that full scale stands for: one value, or one for each channel
     * @param supplyVolts direct volts at the amplifier's terminals, above 0
     * @param supplyAmps supply current in amperes, when it was read
     * @param caseCelsius temperature of the amplifier's case, when it was read
     * @param ambientCelsius air temperature, when it was read
     * @param recordedAt when
     */
    record Recorded(
            Path file,
            double driveDb,
            List<Double> voltsPerFullScale,
            double supplyVolts,
            OptionalDouble supplyAmps,
            OptionalDouble caseCelsius,
            OptionalDouble ambientCelsius,
            Instant recordedAt) {
        public Recorded {
            voltsPerFullScale = List.copyOf(voltsPerFullScale);
            if (voltsPerFullScale.isEmpty()) {
                throw new IllegalArgumentException(
                        "voltsPerFullScale is empty; it needs one value, or one for each channel");
            }
            if (!Double.isFinite(driveDb)) {
                throw new IllegalArgumentException("driveDb is " + driveDb + "; it must be a finite number");
            }
            if (!Double.isFinite(supplyVolts) || supplyVolts <= 0) {
                throw new IllegalArgumentException(
                        "supplyVolts is " + supplyVolts + "; it must be a finite number above 0");
            }
        }
    }
}
