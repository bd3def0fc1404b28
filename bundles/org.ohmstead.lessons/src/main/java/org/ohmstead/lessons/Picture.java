// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import org.ohmstead.plot.Plot;

/**
 * A plot that a lesson shows.
 *
 * @param id its name in files: small letters, digits and hyphens
 * @param plot what is drawn
 * @param revealing whether it gives the answer away, so that it is hidden until the learner has predicted
 */
public record Picture(String id, Plot plot, boolean revealing) {
    /** Checks the parameters. */
    public Picture {
        Checks.id(id, "id");
        Checks.present(plot, "plot");
    }
}
