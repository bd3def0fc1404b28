// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Gain structure: how source and amplifier are set to each other, so that the amplifier reaches its end point where it should, and its
 * channels are alike. Everything is plain arithmetic on sines; full scale (0 dBFS) is the level of a sine whose peaks just reach it.
 *
 * <pre>{@code
 * GainTarget target = new GainTarget(100, 4, false);
 * GainSetup setup = GainSetup.withOverlap(5, 10, target);   // 5 V at full scale, 10 dB of overlap
 * setup.sensitivityVoltsRms();                              // 1.581 V
 * setup.gainDb();                                           // 22.04 dB
 * setup.checkAt(-20).outputVoltsRms();                      // 2.000 V at the load: the meter reading to look for
 * }</pre>
 */
package org.ohmstead.signal.gain;
