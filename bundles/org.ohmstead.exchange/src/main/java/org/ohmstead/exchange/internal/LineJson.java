// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.units.text.Messages;

/** The lines of a log as text: a head that names the chains, then an entry in each. */
final class LineJson {
    private static final Messages TEXTS = Messages.of(LineJson.class);
    static final int FORMAT_VERSION = 1;
    static final int LONGEST_LINE = 32 << 20;

    private static final String FORMAT = "ohmstead-log";
    private static final String HASH = "[0-9a-f]{64}";

    private static final ObjectMapper JSON = new ObjectMapper(JsonFactory.builder()
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(8)
                            .maxStringLength(LONGEST_LINE)
                            .maxNumberLength(30)
                            .build())
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

    private LineJson() {}

    /** A line that is not what it should be. */
    static final class NotALine extends IOException {
        private static final long serialVersionUID = 1L;

        NotALine(String what) {
            super(what);
        }
    }

    /**
     * A row with the chain that it belongs to.
     *
     * @param chain hash of the chain's first entry
     * @param row the row
     */
    record ChainRow(String chain, ChainedRow row) {}

    static byte[] head(String title, String softwareVersion, Instant writtenAt, List<ChainInfo> chains)
            throws IOException {
        ObjectNode root = JSON.createObjectNode();
        root.put("format", FORMAT);
        root.put("formatVersion", FORMAT_VERSION);
        root.put("softwareVersion", softwareVersion);
        root.put("writtenAt", writtenAt.toString());
        root.put("title", title);
        ArrayNode list = root.putArray("chains");
        for (ChainInfo chain : chains) {
            list.addObject()
                    .put("chain", chain.chain())
                    .put("label", chain.label())
                    .put("name", chain.name())
                    .put("entries", chain.entries())
                    .put("firstSequence", chain.firstSequence())
                    .put("headHash", chain.headHash());
        }
        return JSON.writeValueAsBytes(root);
    }

    static byte[] line(String chain, ChainedRow row) throws IOException {
        return JSON.writeValueAsBytes(JSON.createObjectNode()
                .put("chain", chain)
                .put("sequence", row.sequence())
                .put("kind", row.kind())
                .put("id", row.entryId())
                .put("recordedAt", row.recordedAt())
                .put("previousHash", row.previousHash())
                .put("hash", row.hash())
                .put("body", row.body()));
    }

    /** Returns the chains that the head names. */
    static List<ChainInfo> chains(byte[] line) throws IOException {
        JsonNode root = JSON.readTree(line);
        if (root == null || !root.path("format").asText().equals(FORMAT)) {
            throw new NotALine(TEXTS.text("line.noHead"));
        }
        int version = root.path("formatVersion").asInt(0);
        if (version < 1 || version > FORMAT_VERSION) {
            throw new NotALine(TEXTS.text("line.newer", version, FORMAT_VERSION));
        }
        List<ChainInfo> chains = new ArrayList<>();
        for (JsonNode chain : root.path("chains")) {
            long entries = number(chain, "entries", 0);
            chains.add(new ChainInfo(
                    hash(chain, "chain"),
                    text(chain, "label"),
                    text(chain, "name"),
                    entries,
                    hash(chain, "headHash"),
                    number(chain, "firstSequence", 1)));
        }
        boolean ownFirst = !chains.isEmpty()
                && chains.get(0).label().isEmpty()
                && chains.stream().filter(chain -> chain.label().isEmpty()).count() == 1;
        if (!ownFirst || chains.stream().map(ChainInfo::chain).distinct().count() != chains.size()) {
            throw new NotALine(TEXTS.text("line.chains"));
        }
        return chains;
    }

    /** Returns the row of a line. */
    static ChainRow row(byte[] line) throws IOException {
        JsonNode root = JSON.readTree(line);
        if (root == null || !root.isObject()) {
            throw new NotALine(TEXTS.text("line.noEntry"));
        }
        return new ChainRow(
                hash(root, "chain"),
                new ChainedRow(
                        number(root, "sequence", 1),
                        text(root, "kind"),
                        text(root, "id"),
                        text(root, "recordedAt"),
                        text(root, "body"),
                        hash(root, "previousHash"),
                        hash(root, "hash")));
    }

    private static String text(JsonNode node, String field) throws NotALine {
        JsonNode value = node.path(field);
        if (!value.isTextual()) {
            throw new NotALine(TEXTS.text("line.noText", field));
        }
        return value.textValue();
    }

    private static String hash(JsonNode node, String field) throws NotALine {
        String text = text(node, field);
        if (!text.matches(HASH)) {
            throw new NotALine(TEXTS.text("line.noHash", field));
        }
        return text;
    }

    private static long number(JsonNode node, String field, long least) throws NotALine {
        JsonNode value = node.path(field);
        boolean fits = value.isIntegralNumber()
                && value.canConvertToLong()
                && value.longValue() >= least
                && value.longValue() < 1L << 53;
        if (!fits) {
            throw new NotALine(TEXTS.text("line.noNumber", field));
        }
        return value.longValue();
    }
}
