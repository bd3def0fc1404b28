// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

/**
 * A plug-in as it stands now.
 *
 * @param kind what it is
 * @param id unique within its kind
 * @param name what a person calls it
 * @param version its version; empty for a precaution
 * @param faultsInARow faults since it last did well, at least 0
 * @param setAside whether it is not used until it is brought back
 * @param lastFault what it did last, a whole sentence; empty when nothing
 */
public record PluginView(
        PluginKind kind,
        String id,
        String name,
        String version,
        int faultsInARow,
        boolean setAside,
        String lastFault) {}
