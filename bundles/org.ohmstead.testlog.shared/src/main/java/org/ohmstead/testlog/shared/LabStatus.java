// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.util.List;
import java.util.Objects;

/**
 * What the server says about itself and the user.
 *
 * @param server version of PostgreSQL
 * @param schemaVersion version of the shared log
 * @param role what the user may do
 * @param encryption protocol and cipher of the connection; empty when it is not encrypted
 * @param chains number of chains
 * @param entries number of entries in all of them
 * @param cautions what whoever runs the server should change, in whole sentences
 */
public record LabStatus(
        String server,
        int schemaVersion,
        LabRole role,
        String encryption,
        int chains,
        long entries,
        List<String> cautions) {
    public LabStatus {
        Objects.requireNonNull(server, "server");
        Objects.requireNonNull(role, "role");
        Objects.requireNonNull(encryption, "encryption");
        cautions = List.copyOf(cautions);
    }
}
