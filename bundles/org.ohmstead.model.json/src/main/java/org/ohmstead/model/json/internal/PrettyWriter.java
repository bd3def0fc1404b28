// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;

/** Writes JSON for people and for version control: one value in a line, two spaces of indent, Unix line ends. */
public final class PrettyWriter {
    private static final ObjectWriter WRITER = new ObjectMapper().writer(printer());

    private PrettyWriter() {}

    private static DefaultPrettyPrinter printer() {
        Separators separators = Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                .withObjectEmptySeparator("")
                .withArrayEmptySeparator("");
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter(separators);
        printer.indentObjectsWith(indenter);
        printer.indentArraysWith(indenter);
        return printer;
    }

    /** Returns the text of a value, with a line end behind it. */
    public static String write(JsonNode node) {
        try {
            return WRITER.writeValueAsString(node) + "\n";
        } catch (JsonProcessingException impossible) {
            throw new IllegalArgumentException(
                    "node cannot be written as JSON: " + impossible.getMessage(), impossible);
        }
    }
}
