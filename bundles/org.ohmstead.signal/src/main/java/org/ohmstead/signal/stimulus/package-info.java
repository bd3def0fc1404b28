// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * What is fed into an amplifier under test: signals as records, their samples at a sample rate, files of them with markers by which a recording
 * is aligned again, a numbered set of files for a player without a computer, and playing by a sound card.
 *
 * <pre>{@code
 * TestSignal bursts = new TestSignal.ToneBursts(1000, -10, TestSignal.ToneBursts.USUAL, 30);
 * Stimulus stimulus = Stimulus.of(bursts, 48_000, true);
 * new SignalFile(stimulus, SampleFormat.INTEGER_24, ChannelUse.BOTH, true, 1).write(Path.of("bursts.wav"), share -> true);
 * }</pre>
 */
package org.ohmstead.signal.stimulus;
