// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.ohmstead.model.Part;
import org.ohmstead.model.json.internal.BenchReader;
import org.ohmstead.model.json.internal.FieldReader;
import org.ohmstead.model.json.internal.JsonSource;
import org.ohmstead.model.json.internal.PartTable;
import org.ohmstead.units.text.Messages;

/**
 * Reads a stock of resistors from a file of its own: JSON or, when the name ends in {@code .csv}, a table.
 *
 * <p>JSON is a list of parts as they stand in {@code project.json}, an object with such a list in {@code parts}, or a whole project. A
 * table has a header line with the same names, values with or without units:
 *
 * <pre>{@code
 * id,ohms,toleranceRatio,ratedWatts,ratedToCelsius,zeroPowerCelsius,mounting,count
 * 8R2-100W,8R2,5 %,100 W,25,250,heatSink,4
 * }</pre>
 */
public final class StockFile {
    private static final Messages TEXTS = Messages.of(StockFile.class);

    private StockFile() {}

    /**
     * Returns the parts that a file holds, in its order, with ids that differ.
     *
     * @throws ProjectFileException when it cannot be read, is wrong, or holds no part; the message names the place and the remedy
     */
    public static List<Part> read(Path file) throws ProjectFileException {
        JsonSource source = JsonSource.ofFile(file);
        boolean table = file.toString().toLowerCase(Locale.ROOT).endsWith(".csv");
        List<Part> parts = table ? PartTable.read(source) : json(source);
        if (parts.isEmpty()) {
            throw new ProjectFileException(String.valueOf(file.getFileName()), TEXTS.text("stock.empty", file), null);
        }
        Set<String> ids = new HashSet<>();
        for (Part part : parts) {
            if (!ids.add(part.id())) {
                throw new ProjectFileException(
                        String.valueOf(file.getFileName()), TEXTS.text("stock.twice", file, part.id()), null);
            }
        }
        return parts;
    }

    private static List<Part> json(JsonSource source) throws ProjectFileException {
        JsonNode root = source.parse();
        if (root.isArray()) {
            return FieldReader.list(source, root, "$", "field.bench.parts", BenchReader::part);
        }
        JsonNode bench = root.path("bench");
        String path = bench.isObject() ? "$.bench.parts" : "$.parts";
        JsonNode parts = bench.isObject() ? bench.path("parts") : root.path("parts");
        if (parts.isMissingNode()) {
            throw new ProjectFileException(source.label(), TEXTS.text("stock.noList", source.label()), null);
        }
        return FieldReader.list(source, parts, path, "field.bench.parts", BenchReader::part);
    }
}
