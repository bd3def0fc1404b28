// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.measure.bench.OperatorPort;
import org.ohmstead.measure.engine.Catalog;

/** Where a run of the command line has its plug-ins from. */
@FunctionalInterface
interface PluginSource {
    /**
     * Returns the catalog of the plug-ins that are there.
     *
     * @param operator who is asked by benches that ask a person
     * @throws OutsideException when there is none
     */
    Catalog catalog(OperatorPort operator) throws OutsideException;
}
