// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.sample.internal;

import org.ohmstead.model.Cable;
import org.ohmstead.model.Project;

/**
 * What the supply cable takes away from the supply at the current that the amplifier's fuses are rated for.
 *
 * @param amps the current, the fuses' rated currents added up; 0 when no fuse is listed
 * @param loopOhms resistance there and back
 */
record CableDrop(double amps, double loopOhms) {

    /** Returns the drop of a project's cable. */
    static CableDrop of(Project project) {
        Cable cable = project.bench().cable();
        return new CableDrop(project.amplifier().totalFuseAmps(), cable.loopOhms());
    }

    /** Returns the direct voltage that is lost between supply and amplifier, in volts (Ohm's law). */
    double volts() {
        return amps * loopOhms;
    }

    /** Returns the heat that the cable gives off, in watts (Joule's law). */
    double watts() {
        return amps * amps * loopOhms;
    }
}
