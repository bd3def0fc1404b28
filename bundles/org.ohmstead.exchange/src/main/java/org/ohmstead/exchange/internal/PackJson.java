// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.PackManifest;
import org.ohmstead.exchange.PackManifest.PackedFile;
import org.ohmstead.units.text.Messages;

/** What a pack says about itself, as JSON. */
final class PackJson {
    private static final Messages TEXTS = Messages.of(PackJson.class);
    private static final String FORMAT = "ohmstead-project";
    private static final String HASH = "[0-9a-f]{64}";
    private static final int DEEPEST = 8;
    private static final int LONGEST_TEXT = 10_000;

    private static final ObjectMapper JSON = new ObjectMapper(JsonFactory.builder()
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(DEEPEST)
                            .maxStringLength(LONGEST_TEXT)
                            .maxNumberLength(30)
                            .build())
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

    private PackJson() {}

    static String write(PackManifest manifest) {
        ObjectNode root = JSON.createObjectNode();
        root.put("format", FORMAT);
        root.put("formatVersion", manifest.formatVersion());
        root.put("softwareVersion", manifest.softwareVersion());
        root.put("packedAt", manifest.packedAt().toString());
        root.put("title", manifest.title());
        root.put("headHash", manifest.headHash());
        root.put("entries", manifest.entries());
        ArrayNode files = root.putArray("files");
        for (PackedFile file : manifest.files()) {
            files.addObject()
                    .put("name", file.name())
                    .put("bytes", file.bytes())
                    .put("sha256", file.sha256());
        }
        return root.toPrettyString() + "\n";
    }

    static PackManifest read(String archive, byte[] text) throws ExchangeException {
        try {
            JsonNode root = JSON.readTree(text);
            if (root == null || !root.path("format").asText().equals(FORMAT)) {
                throw ExchangeException.refused(TEXTS.text("pack.noManifestOfOurs", archive));
            }
            int version = root.path("formatVersion").asInt(0);
            if (version > PackManifest.FORMAT_VERSION) {
                throw ExchangeException.refused(
                        TEXTS.text("pack.newer", archive, version, PackManifest.FORMAT_VERSION));
            }
            return manifest(root, version);
        } catch (IOException | DateTimeException | IllegalArgumentException wrong) {
            String detail =
                    wrong instanceof JsonProcessingException json ? json.getOriginalMessage() : wrong.getMessage();
            throw ExchangeException.refused(TEXTS.text("pack.manifestUnread", archive, detail), wrong);
        }
    }

    private static PackManifest manifest(JsonNode root, int version) {
        if (version < 1 || !root.path("files").isArray()) {
            throw new IllegalArgumentException(TEXTS.text("manifest.noList"));
        }
        List<PackedFile> files = new ArrayList<>();
        for (JsonNode file : root.path("files")) {
            JsonNode bytes = file.path("bytes");
            if (!bytes.canConvertToLong() || !bytes.isIntegralNumber() || bytes.longValue() < 0) {
                throw new IllegalArgumentException(TEXTS.text("manifest.noSize"));
            }
            files.add(new PackedFile(text(file, "name"), bytes.longValue(), hash(file, "sha256")));
        }
        return new PackManifest(
                version,
                text(root, "softwareVersion"),
                Instant.parse(text(root, "packedAt")),
                text(root, "title"),
                hash(root, "headHash"),
                root.path("entries").asLong(0),
                files);
    }

    private static String text(JsonNode node, String field) {
        if (!node.path(field).isTextual()) {
            throw new IllegalArgumentException(TEXTS.text("manifest.noField", field));
        }
        return node.path(field).textValue();
    }

    private static String hash(JsonNode node, String field) {
        String text = text(node, field);
        if (!text.matches(HASH)) {
            throw new IllegalArgumentException(TEXTS.text("manifest.noHash", field));
        }
        return text;
    }
}
