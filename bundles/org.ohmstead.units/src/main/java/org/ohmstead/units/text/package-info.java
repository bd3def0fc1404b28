// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Texts for people in the language that they read.
 *
 * <pre>{@code
 * Messages messages = Messages.of(GainPane.class);
 * label.setText(messages.text("headroom", "3.5 dB"));
 * }</pre>
 */
package org.ohmstead.units.text;
