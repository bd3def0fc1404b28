// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Instant;
import java.util.OptionalDouble;
import org.ohmstead.model.CaptureUsed;

/**
 * What is kept of a level beside its analysis.
 *
 * @param capture the recorded waveform
 * @param caseCelsius temperature of the amplifier's case, when it was read
 * @param ambientCelsius air temperature, when it was read
 * @param recordedAt when
 */
record LevelFacts(CaptureUsed capture, OptionalDouble caseCelsius, OptionalDouble ambientCelsius, Instant recordedAt) {}
