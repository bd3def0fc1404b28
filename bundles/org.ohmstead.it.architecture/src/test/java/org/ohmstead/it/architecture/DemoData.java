// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Files of the demo data. */
final class DemoData {
    private DemoData() {}

    static Path path(String name) {
        return Bundles.root().resolve("demo-data").resolve(name);
    }

    /** Returns the rows of one of the simulator's tables, by column name. Their cells hold no commas. */
    static List<Map<String, String>> table(String name) throws IOException {
        List<String> lines = Files.readAllLines(path(name));
        String[] headers = lines.get(0).split(",");
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < headers.length; i++) {
                row.put(headers[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }
}
