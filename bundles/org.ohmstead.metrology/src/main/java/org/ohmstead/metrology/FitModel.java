// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

/** A formula with unknown parameters. Stateless. */
public interface FitModel {

    /**
     * Returns y for these parameters at these conditions. A value that is not finite is allowed away from the start:
     * the fit then takes a shorter step.
     */
    double value(double[] parameters, double[] conditions);

    /** Returns dy/d(parameter), one entry per parameter, for these parameters at these conditions. */
    double[] gradient(double[] parameters, double[] conditions);
}
