// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * What the parts of the workbench have in common to look at: tones that fit a light and a dark background, distances, icons, numbers
 * as text, and the names under which widgets are found.
 *
 * <pre>{@code
 * Label message = Ids.name(new Label(parent, SWT.WRAP), "supply.message");
 * message.setForeground(Tones.of(parent).error());
 * message.setText(Numbers.shown(13.8, Unit.VOLT) + " is below the rating.");
 * }</pre>
 */
package org.ohmstead.workbench.look;
