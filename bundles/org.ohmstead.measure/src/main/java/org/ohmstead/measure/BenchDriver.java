// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

/** Access to a bench. A plug-in: a class with {@code @Component} that implements this. One instance serves the whole session. */
public interface BenchDriver {
    /** Returns what it is; always the same. */
    DriverInfo info();

    /**
     * Opens the bench. A bench without {@link Ability#SELECT_LOAD} or {@link Ability#SET_SUPPLY_VOLTS} is opened for one step only: the
     * load and the supply volts of the subject's step are set by then.
     *
     * @param subject what is to be measured on it first
     * @param settings values for the driver's settings
     * @throws MeasurementException when the bench does not answer; the message says what to do
     */
    Bench open(Subject subject, Settings settings) throws MeasurementException, InterruptedException;
}
