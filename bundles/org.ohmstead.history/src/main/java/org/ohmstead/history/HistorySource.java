// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.chain.RowSource;
import org.ohmstead.testlog.search.LogIndex;

/**
 * Something that the lab remembers: the log of a project, or one that several benches share.
 *
 * @param name what it is called; unique among the sources
 * @param rows its entries; whoever opened them closes them
 * @param project whose log it is; empty for a shared one
 * @param indexFile where its search index is kept; empty to keep it in memory
 */
public record HistorySource(String name, RowSource rows, Optional<Project> project, Optional<Path> indexFile) {
    /** Checks that it has a name. */
    public HistorySource {
        if (name.isBlank()) {
            throw new IllegalArgumentException("name is blank; it needs a text");
        }
        Objects.requireNonNull(rows, "rows");
        Objects.requireNonNull(project, "project");
        Objects.requireNonNull(indexFile, "indexFile");
    }

    /** Returns the log of a project, with its search index beside it. */
    public static HistorySource of(String name, TestLog log, Project project) {
        return new HistorySource(name, log.rows(), Optional.of(project), Optional.of(LogIndex.beside(log.file())));
    }
}
