// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Sound pressure levels: from a calibrated recording by the definitions of IEC 61672-1, or as typed in; their sums, differences and
 * expected changes; series against frequency and drive; and the cautions about exposure that go with them.
 *
 * <pre>{@code
 * MicrophoneCalibration calibration = MicrophoneCalibration.fromTone(tone, 94, 1000, 0.4);
 * SoundLevels levels = SoundLevelMeter.measure(calibration.pascals(recording), FrequencyWeighting.A);
 * double leqDb = levels.equivalentDb();
 * double twice = ExpectedLevel.changeDb(100, 200); // 3.01 dB
 * }</pre>
 */
package org.ohmstead.signal.sound;
