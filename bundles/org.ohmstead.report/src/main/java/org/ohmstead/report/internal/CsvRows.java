// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.util.List;

/** Writes rows of comma-separated values by RFC 4180. */
public final class CsvRows {
    private static final ObjectWriter WRITER =
            new CsvMapper().writer(CsvSchema.emptySchema().withoutHeader().withLineSeparator("\r\n"));

    private final Appendable target;

    /** Writes to the target, which is not closed. */
    public CsvRows(Appendable target) {
        this.target = target;
    }

    /** Adds a row of these cells. */
    public void add(List<String> cells) throws IOException {
        target.append(WRITER.writeValueAsString(cells));
    }
}
