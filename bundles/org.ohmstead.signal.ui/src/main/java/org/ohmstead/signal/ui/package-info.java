// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The view of recorded waveforms: the captures of the reading that is looked at, or any file, as waveform, spectrum and
 * figures. The view itself is a shell around a composite that stands anywhere.
 *
 * <pre>{@code
 * CaptureComposite captures = new CaptureComposite(shell, desk);
 * captures.askForFile(Path.of("left.wav"));   // or choose a reading at the desk
 * }</pre>
 */
package org.ohmstead.signal.ui;
